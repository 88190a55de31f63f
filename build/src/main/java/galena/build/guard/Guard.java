package galena.build.guard;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Probe;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Battery;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Parameter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Answers what spoils a build. The main method reads in the order of the report. */
public final class Guard {
    private static final double PICOFARAD = 1e-12;
    private static final double LEAD = 10e-9;
    private static final double STRAY_K = 1e-3;
    private static final double PERCENT = 0.01;
    private static final double KELVIN_STEP = 0.5;
    private static final double VOLT_STEP = 0.05;
    /** A hand at ten centimetres from a bare node, common practice. */
    private static final double HAND = 0.1e-12;

    private static final double TEN_TO_ONE_PICOFARAD = 12e-12;
    private static final double TEN_TO_ONE_OHM = 10e6;
    private static final double ONE_TO_ONE_PICOFARAD = 100e-12;
    private static final double ONE_TO_ONE_OHM = 1e6;

    /** What metal near a coil does to it, in shares of one percent less inductance and a tenth less Q. */
    private static final double TOOL_INDUCTANCE = -0.01;

    private static final double TOOL_LOSS = 0.1;

    private final Build build;
    private final Running running;
    private final Circuit circuit;
    private final double carrier;
    private final Figures figures;
    private final Progress progress;

    private Guard(Build build, Running running, Accuracy accuracy, Progress progress) {
        this.build = build;
        this.running = running;
        this.circuit = running.circuit();
        this.carrier = running.state().waveforms().frequency();
        this.progress = progress;
        this.figures = new Figures(build, running, accuracy, progress);
    }

    /**
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates, which leaves nothing to guard
     */
    public static GuardReport of(BuildFolder folder, Overlay overlay, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        progress.at(0, "steady state");
        Running running = Running.of(folder.build(), overlay, accuracy, progress);
        progress.at(0.1, "gradients");
        return new Guard(folder.build(), running, accuracy, progress).report();
    }

    private GuardReport report() {
        GuardReport.Drift drift = drift();
        List<GuardReport.Part> parts = parts();
        List<GuardReport.Stray> strays = strays();
        List<GuardReport.Lead> leads = leads();
        List<GuardReport.Winding> couplings = couplings();
        List<GuardReport.Tool> tools = tools();
        List<GuardReport.Probe> probes = probes();
        List<GuardReport.Point> points = points();
        List<String> advice = Advice.of(build, carrier, parts, strays, leads, couplings, probes, points, drift);
        return new GuardReport(
                carrier,
                running.outputPart(),
                figures.strongest(),
                figures.depth(),
                figures.trimmer(),
                figures.hertzPerPercent(),
                parts,
                strays,
                leads,
                couplings,
                tools,
                probes,
                points,
                drift,
                advice);
    }

    private void reached(double share, String doing) {
        progress.at(share, doing);
        progress.watch().check();
    }

    private List<GuardReport.Part> parts() {
        List<GuardReport.Part> parts = new ArrayList<>();
        for (Scaled scaled : Scaled.all(circuit)) {
            reached(0.2, "part values");
            parts.add(new GuardReport.Part(scaled.value(), figures.moves(scaled::on, PERCENT)));
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
            reached(0.4, "strays");
            for (int j = i + 1; j < nets.size(); j++) {
                String from = nets.get(i), to = nets.get(j);
                strays.add(new GuardReport.Stray(from, to, figures.moves(at -> across(at, from, to), PICOFARAD)));
            }
        }
        strays.sort(Comparator.comparingDouble(s -> -Math.abs(s.perPicofarad().carrier())));
        return strays;
    }

    private static Parameter across(OrbitAdjoint at, String from, String to) {
        return at.capacitance(at.equations().net(from), at.equations().net(to));
    }

    /** Of a part with two leads only the sum of both counts; of one with more, each. */
    private List<GuardReport.Lead> leads() {
        List<GuardReport.Lead> leads = new ArrayList<>();
        for (Part part : circuit.parts()) {
            if (build.part(part.name()).filter(e -> !e.kind().isProgramme()).isEmpty()) continue;
            reached(0.5, "leads");
            Set<String> nets = new LinkedHashSet<>(part.nets());
            boolean two = nets.size() == 2;
            for (String net : nets) {
                if (two && net.equals(Circuit.GROUND)) continue;
                leads.add(new GuardReport.Lead(part.name(), net, figures.moves(at -> lead(at, part, net), LEAD)));
                if (two) break;
            }
        }
        leads.sort(
                Comparator.comparingDouble(l -> -Math.abs(l.perTenNanohenries().carrier())));
        return leads;
    }

    /** Of the circuit's own part of that name: a held capacitor is a voltage there, with the same leads. */
    private static Parameter lead(OrbitAdjoint at, Part part, String net) {
        return at.lead(at.equations().circuit().part(part.name()).orElseThrow(), net);
    }

    private List<GuardReport.Winding> couplings() {
        List<Coil> coils = coils();
        List<GuardReport.Winding> couplings = new ArrayList<>();
        for (int i = 0; i < coils.size(); i++) {
            for (int j = i + 1; j < coils.size(); j++) {
                Coil a = coils.get(i), b = coils.get(j);
                double mutual = STRAY_K * Math.sqrt(a.inductance() * b.inductance());
                Function<OrbitAdjoint, Parameter> between = at -> at.inductance(
                        at.equations().current(a.name()).orElseThrow(),
                        at.equations().current(b.name()).orElseThrow());
                couplings.add(new GuardReport.Winding(a.name(), b.name(), figures.moves(between, mutual)));
            }
        }
        couplings.sort(Comparator.comparingDouble(c -> -Math.abs(c.moves().carrier())));
        return couplings;
    }

    private List<Coil> coils() {
        return circuit.parts().stream()
                .filter(Coil.class::isInstance)
                .map(Coil.class::cast)
                .toList();
    }

    /** Metal weakens the inductance, loss and all, and adds loss of its own. */
    private List<GuardReport.Tool> tools() {
        List<GuardReport.Tool> tools = new ArrayList<>();
        for (Coil coil : coils()) {
            reached(0.55, "tools");
            Scaled near = new Scaled(
                    coil.name(), s -> coil.scaled(1 + TOOL_INDUCTANCE * (s - 1), 1 + TOOL_LOSS * (s - 1)), 0);
            tools.add(new GuardReport.Tool(coil.name(), figures.moves(near::on, 1)));
        }
        tools.sort(Comparator.comparingDouble(t -> -Math.abs(t.moves().carrier())));
        return tools;
    }

    private List<GuardReport.Probe> probes() {
        Touching touching = new Touching(circuit, running.state(), progress.watch());
        List<String> nets =
                circuit.nets().stream().filter(n -> !n.contains(".")).toList();
        List<GuardReport.Probe> probes = new ArrayList<>();
        for (String net : nets) {
            reached(0.6 + 0.35 * probes.size() / nets.size(), "probes");
            probes.add(new GuardReport.Probe(
                    net,
                    touching.by(net, Circuit.GROUND, TEN_TO_ONE_OHM, TEN_TO_ONE_PICOFARAD),
                    touching.by(net, Circuit.GROUND, ONE_TO_ONE_OHM, ONE_TO_ONE_PICOFARAD),
                    HAND * figures.hertz(at -> across(at, net, Circuit.GROUND))));
        }
        probes.sort(Comparator.comparingDouble(p -> -p.tenToOne().map(Math::abs).orElse(Double.POSITIVE_INFINITY)));
        return probes;
    }

    private List<GuardReport.Point> points() {
        Touching touching = new Touching(circuit, running.state(), progress.watch());
        List<GuardReport.Point> points = new ArrayList<>();
        for (TestPoint point : build.points().values()) {
            if (point.probe().isEmpty()) continue;
            reached(0.95, "test points");
            Probe probe = point.probe().get();
            Optional<Double> hertz = touching.by(point.at(), point.to(), probe.resistance(), probe.capacitance());
            points.add(new GuardReport.Point(point.name(), point.at(), probe.name(), hertz));
        }
        return points;
    }

    private GuardReport.Drift drift() {
        reached(0.15, "heat and supply");
        List<GuardReport.Share> shares = new ArrayList<>();
        double perKelvin = figures.hertz(Guard::kelvin), rest = perKelvin;
        for (Scaled scaled : Scaled.all(circuit)) {
            if (scaled.temperatureCoefficient() == 0) continue;
            double hertz = figures.hertz(scaled::on) * scaled.temperatureCoefficient();
            rest -= hertz;
            shares.add(new GuardReport.Share(scaled.value(), 10 * hertz));
        }
        shares.add(new GuardReport.Share("devices and copper", 10 * rest));
        shares.sort(Comparator.comparingDouble(s -> -Math.abs(s.hertz())));
        return new GuardReport.Drift(
                figures.moves(Guard::kelvin, 10),
                shares,
                figures.moves(Guard::volt, 1),
                Compensation.of(build, circuit, figures, perKelvin));
    }

    private static Parameter kelvin(OrbitAdjoint at) {
        Circuit circuit = at.equations().circuit();
        double celsius = circuit.temperature();
        return at.between(
                Equations.of(circuit.atTemperature(celsius - KELVIN_STEP)),
                Equations.of(circuit.atTemperature(celsius + KELVIN_STEP)),
                KELVIN_STEP);
    }

    private static Parameter volt(OrbitAdjoint at) {
        Circuit circuit = at.equations().circuit();
        if (!(circuit.part(Supply.NAME).orElse(null) instanceof Battery b)) return at.nothing();
        return at.between(
                Equations.of(circuit.with(raised(b, -VOLT_STEP))),
                Equations.of(circuit.with(raised(b, VOLT_STEP))),
                VOLT_STEP);
    }

    private static Battery raised(Battery b, double volts) {
        return new Battery(b.name(), b.plus(), b.minus(), b.emf() + volts, b.internalResistance());
    }
}
