package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Supply;
import galena.build.quantity.Unit;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Resonator;
import galena.engine.startup.Linearised;
import galena.engine.startup.Mode;
import galena.engine.startup.Startup;
import galena.engine.steady.Floquet;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import galena.trade.battery.Battery;
import galena.trade.battery.Endurance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A steady state in a builder's terms. */
final class OscillationFigures {
    private static final int HARMONICS = 10;
    private static final double POSITION_STEP = 1e-3;
    private static final double HOUR = 3600;
    /** Coils with less than this share of the largest carrier current or voltage are not listed. */
    private static final double QUIET = 1e-3;

    private final Build build;
    private final Overlay overlay;
    private final Assembled assembled;
    private final SteadyState.Found found;
    private final Tolerances tolerances;
    private final OperatingPoint.Found point;
    private final Waveforms waveforms;
    private final Equations equations;

    OscillationFigures(
            Build build,
            Overlay overlay,
            Assembled assembled,
            SteadyState.Found found,
            Tolerances tolerances,
            OperatingPoint.Found point) {
        this.build = build;
        this.overlay = overlay;
        this.assembled = assembled;
        this.found = found;
        this.tolerances = tolerances;
        this.point = point;
        this.waveforms = found.waveforms();
        this.equations = waveforms.equations();
    }

    Prediction.Oscillation all() {
        Figure supply = supplyCurrent();
        Floquet floquet = found.floquet();
        return new Prediction.Oscillation(
                tolerances.figure(Readout.frequency(), Unit.HERTZ, "carrier", ""),
                found.error().frequency(),
                found.error().harmonicDecibels(),
                floquet.stability(),
                floquet.largest(),
                spectra(),
                supply,
                inputPower(supply),
                powers(),
                batteryHours(supply),
                meanVoltages(),
                tolerances.causes(Readout.frequency()),
                tanks(),
                adjustments());
    }

    private List<Prediction.Spectrum> spectra() {
        double volts = 0, amperes = 0;
        List<Part> coils = assembled.circuit().parts().stream()
                .filter(p -> p instanceof Coil || p instanceof Resonator)
                .toList();
        for (Part coil : coils) {
            volts = Math.max(volts, waveforms.amplitude(net(coil, 0), net(coil, 1), 1));
            amperes = Math.max(amperes, waveforms.currentAmplitude(coil.name(), 1));
        }
        List<Prediction.Spectrum> spectra = new ArrayList<>();
        for (Part coil : coils) {
            int a = net(coil, 0),
                    b = net(coil, 1),
                    current = equations.current(coil.name()).orElseThrow();
            if (waveforms.amplitude(a, b, 1) > QUIET * volts) {
                spectra.add(spectrum(coil.name(), "voltage across " + coil.name(), a, b, Unit.VOLT));
            }
            if (waveforms.amplitude(current, 0, 1) > QUIET * amperes) {
                spectra.add(spectrum(coil.name(), "current in " + coil.name(), current, 0, Unit.AMPERE));
            }
        }
        for (PartEntry entry : build.parts().values()) {
            if (entry.kind() != PartKind.WIRE) continue;
            String foot = Output.branch(assembled.circuit(), entry.name());
            int current = equations.current(foot).orElseThrow();
            if (waveforms.amplitude(current, 0, 1) == 0) continue;
            spectra.add(spectrum(entry.name(), "current in " + entry.name(), current, 0, Unit.AMPERE));
        }
        return spectra;
    }

    private int net(Part part, int pin) {
        return equations.net(part.nets().get(pin));
    }

    private Prediction.Spectrum spectrum(String part, String quantity, int a, int b, Unit unit) {
        List<Figure> harmonics = new ArrayList<>();
        for (int h = 2; h <= HARMONICS; h++) {
            String what = "harmonic " + h + " of " + quantity;
            double level = Readout.decibels(a, b, h).value(waveforms);
            double floor = found.accuracy().floor();
            if (level < -floor) {
                harmonics.add(
                        new Figure.Missing(what, "below −" + Math.round(floor) + " dBc, where it is not certified"));
            } else {
                harmonics.add(tolerances.figure(Readout.decibels(a, b, h), Unit.DECIBEL, what, part));
            }
        }
        Figure.Known fundamental = tolerances.figure(Readout.amplitude(a, b, 1), unit, quantity + ", peak", part);
        return new Prediction.Spectrum(part, quantity, fundamental, harmonics);
    }

    private Figure supplyCurrent() {
        if (build.supply().isEmpty()) return new Figure.Missing("supply current", "the build names no supply");
        int current = equations.current(Supply.NAME).orElseThrow();
        return tolerances.figure(Readout.mean(current, -1), Unit.AMPERE, "supply current", "");
    }

    private Figure inputPower(Figure supply) {
        if (!(supply instanceof Figure.Known current))
            return new Figure.Missing("input power", "the build names no supply");
        double volts = supplyState().voltage();
        return new Figure.Known(
                volts * current.value(),
                Unit.WATT,
                volts * current.low(),
                volts * current.high(),
                current.basis(),
                "input power",
                "");
    }

    private Overlay.SupplyState supplyState() {
        return overlay.supply().orElseGet(() -> CircuitOf.state(build.supply().orElseThrow()));
    }

    private Map<String, Double> powers() {
        Map<String, Double> powers = new LinkedHashMap<>();
        List<Part> parts = new ArrayList<>(assembled.circuit().parts());
        Map<String, Double> watts = new LinkedHashMap<>();
        for (Part part : parts) watts.put(part.name(), waveforms.meanPower(part.name()));
        watts.entrySet().stream()
                .filter(e -> Math.abs(e.getValue()) > 0)
                .sorted(Comparator.comparingDouble(e -> -e.getValue()))
                .forEach(e -> powers.put(e.getKey(), e.getValue()));
        return powers;
    }

    /** Hours until the battery's terminals fall to its end voltage at the typical current. */
    private Figure batteryHours(Figure supply) {
        String what = "battery life";
        if (!(supply instanceof Figure.Known current)) return new Figure.Missing(what, "the build names no supply");
        if (!(build.supply().orElseThrow() instanceof Supply.OfBattery named)) {
            return new Figure.Missing(what, "the supply is not a battery");
        }
        Battery battery = CircuitOf.battery(named);
        Endurance endurance = battery.runtime(current.value(), battery.endVoltage());
        if (endurance instanceof Endurance.Lasts lasts) {
            double share = named.charge(); // what has been used already is gone
            return new Figure.Known(
                    lasts.hours() * share * HOUR,
                    Unit.SECOND,
                    lasts.lowHours() * share * HOUR,
                    lasts.highHours() * share * HOUR,
                    "capacity " + lasts.basis(),
                    what,
                    battery.name());
        }
        return new Figure.Missing(what, "even fresh, the battery is below its end voltage at this current");
    }

    private List<Figure> meanVoltages() {
        List<Figure> means = new ArrayList<>();
        for (String net : assembled.circuit().nets()) {
            if (Predict.isInner(net)) continue;
            means.add(tolerances.figure(
                    Readout.mean(equations.net(net), 1), Unit.VOLT, "mean voltage while oscillating", net));
        }
        return means;
    }

    private List<Prediction.Tank> tanks() {
        Linearised linearised = Linearised.at(equations, point.x());
        List<Prediction.Tank> tanks = new ArrayList<>();
        for (Mode mode : linearised.modes()) {
            if (mode.growth() >= 0) continue;
            tanks.add(new Prediction.Tank(mode.frequency(), mode.q(), Startup.mostStored(equations, mode)));
        }
        return tanks;
    }

    private List<Prediction.Adjustment> adjustments() {
        OrbitDerivatives orbit = new OrbitDerivatives(found);
        List<Prediction.Adjustment> adjustments = new ArrayList<>();
        for (String name : build.adjustments()) {
            double position = position(name);
            double low = Math.max(0, position - POSITION_STEP), high = Math.min(1, position + POSITION_STEP);
            Equations below = Equations.of(turned(name, low)), above = Equations.of(turned(name, high));
            double slope = orbit.between(below, above, (high - low) / 2).frequency();
            adjustments.add(new Prediction.Adjustment(name, position, slope / 100));
        }
        return adjustments;
    }

    private double position(String name) {
        Double laidOver = overlay.adjustments().get(name);
        return laidOver != null
                ? laidOver
                : build.part(name).orElseThrow().position().orElseThrow();
    }

    private Circuit turned(String name, double position) {
        return Turned.to(build, assembled.circuit(), name, position);
    }

    /** The carriers at the stops of the adjustment that moves it most. */
    Optional<Verdict.Reach> reach(Progress progress) {
        Optional<Prediction.Adjustment> strongest = adjustments().stream()
                .filter(a -> Math.abs(a.hertzPerPercent()) > 0)
                .max(Comparator.comparingDouble(a -> Math.abs(a.hertzPerPercent())));
        if (strongest.isEmpty() || waveforms.drive() != 0) return Optional.empty();
        Coverage coverage =
                Coverage.ends(build, assembled.circuit(), strongest.get().part(), found, progress);
        return coverage.points().isEmpty()
                ? Optional.empty()
                : Optional.of(new Verdict.Reach(strongest.get().part(), coverage.lowest(), coverage.highest()));
    }
}
