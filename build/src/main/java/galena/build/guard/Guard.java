package galena.build.guard;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Load;
import galena.engine.part.Part;
import galena.engine.part.Trimmer;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Answers what spoils a build. The main method reads in the order of the report. */
public final class Guard {
    private static final double PICOFARAD = 1e-12;
    private static final double LEAD = 10e-9;
    private static final double STRAY_K = 1e-3;
    private static final double STEP = 1e-4;
    private static final double HALF_KELVIN = 0.5;
    private static final double HALF_VOLT = 0.05;
    /** A hand at ten centimetres from a bare node, common practice. */
    private static final double HAND = 0.1e-12;

    private static final double TEN_TO_ONE_PICOFARAD = 12e-12;
    private static final double TEN_TO_ONE_OHM = 10e6;
    private static final double ONE_TO_ONE_PICOFARAD = 100e-12;
    private static final double ONE_TO_ONE_OHM = 1e6;
    private static final double N750 = -750e-6;

    private final Build build;
    private final Circuit circuit;
    private final Equations equations;
    private final SteadyState.Found found;
    private final Waveforms waveforms;
    private final Figures figures;
    private final Progress progress;

    private Guard(Build build, Running running, Progress progress) {
        this.build = build;
        this.circuit = running.circuit();
        this.found = running.state();
        this.waveforms = found.waveforms();
        this.equations = waveforms.equations();
        this.figures = new Figures(build, running);
        this.progress = progress;
    }

    /**
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates, which leaves nothing to guard
     */
    public static GuardReport of(BuildFolder folder, Overlay overlay, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        Running running = Running.of(folder.build(), overlay, accuracy, progress);
        return new Guard(folder.build(), running, progress).report();
    }

    private GuardReport report() {
        progress.at(0.3, "sensitivities");
        List<GuardReport.Part> parts = parts();
        List<GuardReport.Stray> strays = strays();
        List<GuardReport.Lead> leads = leads();
        List<GuardReport.Winding> couplings = couplings();
        List<GuardReport.Tool> tools = tools();
        progress.at(0.5, "probes");
        List<GuardReport.Probe> probes = probes();
        progress.at(0.9, "drift");
        GuardReport.Drift drift = drift();
        List<String> advice = Advice.of(build, waveforms.frequency(), parts, strays, leads, couplings, probes, drift);
        return new GuardReport(
                waveforms.frequency(),
                figures.trimmer(),
                figures.hertzPerPercent(),
                parts,
                strays,
                leads,
                couplings,
                tools,
                probes,
                drift,
                advice);
    }

    private List<GuardReport.Part> parts() {
        List<GuardReport.Part> parts = new ArrayList<>();
        for (Scaled scaled : Scaled.all(circuit)) {
            Equations below = Equations.of(circuit.with(scaled.at(1 - STEP)));
            Equations above = Equations.of(circuit.with(scaled.at(1 + STEP)));
            parts.add(new GuardReport.Part(scaled.value(), figures.moves(g -> g.between(below, above, STEP), 0.01)));
        }
        parts.sort(Comparator.comparingDouble(p -> -Math.abs(p.perPercent().carrier())));
        return parts;
    }

    private List<GuardReport.Stray> strays() {
        List<String> nets = new ArrayList<>(
                circuit.nets().stream().filter(n -> !n.contains(".")).toList());
        nets.add(Circuit.GROUND);
        List<GuardReport.Stray> strays = new ArrayList<>();
        for (int i = 0; i < nets.size(); i++) {
            for (int j = i + 1; j < nets.size(); j++) {
                int a = equations.net(nets.get(i)), b = equations.net(nets.get(j));
                strays.add(new GuardReport.Stray(
                        nets.get(i), nets.get(j), figures.moves(g -> g.byCapacitance(a, b), PICOFARAD)));
            }
        }
        strays.sort(Comparator.comparingDouble(s -> -Math.abs(s.perPicofarad().carrier())));
        return strays;
    }

    /** A lead's inductance L makes a capacitor seem larger by ω²LC² at the carrier, and adds to a coil. */
    private List<GuardReport.Lead> leads() {
        double omega = 2 * Math.PI * waveforms.frequency();
        List<GuardReport.Lead> leads = new ArrayList<>();
        Gradient frequency = figures.frequency();
        for (Part part : circuit.parts()) {
            double farads;
            if (part instanceof Coil) {
                int current = equations.current(part.name()).orElseThrow();
                leads.add(new GuardReport.Lead(part.name(), LEAD * frequency.byInductance(current, current)));
                continue;
            } else if (part instanceof Capacitor capacitor) {
                farads = capacitor.capacitance();
            } else if (part instanceof Trimmer trimmer) {
                farads = trimmer.capacitance();
            } else {
                continue;
            }
            double resonance = omega * omega * LEAD * farads;
            if (resonance > 0.1 || build.part(part.name()).isEmpty()) continue; // first order no more, or nobody's part
            int a = equations.net(part.nets().get(0)),
                    b = equations.net(part.nets().get(1));
            leads.add(new GuardReport.Lead(part.name(), resonance * farads * frequency.byCapacitance(a, b)));
        }
        leads.sort(Comparator.comparingDouble(l -> -Math.abs(l.hertz())));
        return leads;
    }

    private List<GuardReport.Winding> couplings() {
        List<Coil> coils = circuit.parts().stream()
                .filter(Coil.class::isInstance)
                .map(Coil.class::cast)
                .toList();
        List<GuardReport.Winding> couplings = new ArrayList<>();
        for (int i = 0; i < coils.size(); i++) {
            for (int j = i + 1; j < coils.size(); j++) {
                Coil a = coils.get(i), b = coils.get(j);
                double mutual = STRAY_K * Math.sqrt(a.inductance() * b.inductance());
                double perHenry = figures.frequency()
                        .byInductance(
                                equations.current(a.name()).orElseThrow(),
                                equations.current(b.name()).orElseThrow());
                couplings.add(new GuardReport.Winding(a.name(), b.name(), mutual * perHenry));
            }
        }
        couplings.sort(Comparator.comparingDouble(c -> -Math.abs(c.hertz())));
        return couplings;
    }

    private List<GuardReport.Tool> tools() {
        List<GuardReport.Tool> tools = new ArrayList<>();
        for (Part part : circuit.parts()) {
            if (!(part instanceof Coil coil)) continue;
            Coil below = Scaled.coil(coil, 1 - STEP, 1), above = Scaled.coil(coil, 1 + STEP, 1);
            double inductance = figures.frequency()
                    .between(Equations.of(circuit.with(below)), Equations.of(circuit.with(above)), STEP);
            double loss = figures.frequency()
                    .between(
                            Equations.of(circuit.with(Scaled.coil(coil, 1, 1 - STEP))),
                            Equations.of(circuit.with(Scaled.coil(coil, 1, 1 + STEP))),
                            STEP);
            tools.add(new GuardReport.Tool(coil.name(), -0.01 * inductance + 0.1 * loss));
        }
        tools.sort(Comparator.comparingDouble(t -> -Math.abs(t.hertz())));
        return tools;
    }

    private List<GuardReport.Probe> probes() {
        List<GuardReport.Probe> probes = new ArrayList<>();
        for (String net : circuit.nets()) {
            if (net.contains(".")) continue;
            Optional<Double> ten = touched(net, TEN_TO_ONE_OHM, TEN_TO_ONE_PICOFARAD);
            Optional<Double> one = touched(net, ONE_TO_ONE_OHM, ONE_TO_ONE_PICOFARAD);
            double hand = HAND * figures.frequency().byCapacitance(equations.net(net), 0);
            if (ten.isEmpty()) continue; // even the light probe stops it: the advice says so through the missing net
            probes.add(new GuardReport.Probe(net, ten.get(), one.orElse(0.0), one.isEmpty(), hand));
        }
        probes.sort(Comparator.comparingDouble(p -> -Math.abs(p.tenToOne())));
        return probes;
    }

    private Optional<Double> touched(String net, double ohms, double farads) {
        progress.at(0.6, "probes");
        Circuit loaded = circuit.plus(new Load("probe", net, Circuit.GROUND, ohms, farads));
        SteadyState state =
                new SteadyOscillation(Accuracy.LIVE, progress.watch()).solveNear(Equations.of(loaded), found);
        return state instanceof SteadyState.Found moved
                ? Optional.of(moved.waveforms().frequency() - waveforms.frequency())
                : Optional.empty();
    }

    private GuardReport.Drift drift() {
        double celsius = circuit.temperature();
        Equations cold = Equations.of(circuit.atTemperature(celsius - HALF_KELVIN));
        Equations warm = Equations.of(circuit.atTemperature(celsius + HALF_KELVIN));
        double perKelvin = figures.frequency().between(cold, warm, HALF_KELVIN);
        List<GuardReport.Share> shares = new ArrayList<>();
        double passive = 0;
        for (Scaled scaled : Scaled.all(circuit)) {
            if (scaled.temperatureCoefficient() == 0) continue;
            double perUnit = figures.frequency()
                    .between(
                            Equations.of(circuit.with(scaled.at(1 - STEP))),
                            Equations.of(circuit.with(scaled.at(1 + STEP))),
                            STEP);
            double hertz = 10 * perUnit * scaled.temperatureCoefficient();
            passive += hertz;
            shares.add(new GuardReport.Share(scaled.value(), hertz));
        }
        shares.add(new GuardReport.Share("devices and copper", 10 * perKelvin - passive));
        shares.sort(Comparator.comparingDouble(s -> -Math.abs(s.hertz())));
        return new GuardReport.Drift(10 * perKelvin, shares, perVolt(), compensation(perKelvin));
    }

    private double perVolt() {
        if (!(circuit.part(Supply.NAME).orElse(null) instanceof Battery b)) return 0;
        Battery low = new Battery(b.name(), b.plus(), b.minus(), b.emf() - HALF_VOLT, b.internalResistance());
        Battery high = new Battery(b.name(), b.plus(), b.minus(), b.emf() + HALF_VOLT, b.internalResistance());
        return figures.frequency()
                .between(Equations.of(circuit.with(low)), Equations.of(circuit.with(high)), HALF_VOLT);
    }

    /** The share of the fixed tank capacitor that, as N750, would take the temperature's part out. */
    private String compensation(double perKelvin) {
        Capacitor best = null;
        double strongest = 0;
        for (Part part : circuit.parts()) {
            if (!(part instanceof Capacitor c) || build.part(c.name()).isEmpty()) continue;
            double perUnit =
                    c.capacitance() * figures.frequency().byCapacitance(equations.net(c.from()), equations.net(c.to()));
            if (Math.abs(perUnit) > Math.abs(strongest)) {
                strongest = perUnit;
                best = c;
            }
        }
        if (best == null) return "";
        double change = best.temperatureCoefficient();
        double share = -perKelvin / (strongest * (N750 - change));
        if (share <= 0) {
            return "the carrier falls too little or rises with heat: a compensating N-type capacitor would make it worse";
        }
        if (share > 1) return "more than all of " + best.name() + " would have to be N750";
        return String.format(
                Locale.ROOT,
                "replace %.0f pF of %s's %.0f pF by an N750 capacitor of that value",
                share * best.capacitance() / PICOFARAD,
                best.name(),
                best.capacitance() / PICOFARAD);
    }
}
