package galena.build.substitute;

import galena.build.attempt.Looking;
import galena.build.attempt.Neighbour;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Progress;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.wiring.Names;
import galena.engine.circuit.Circuit;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.trade.preferred.Series;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Every device of the kind in one place: as it is, and where that does not do with the one resistor around it that helps most, found
 * by solving the build at each preferred value within a factor of five.
 */
final class DeviceSubstitutes {
    private static final double REACH = 5;
    private static final int DRAWN = 2;

    private static final int FEW = 8;
    private static final double HOPELESS = 0.5;

    /** Copies are few: one in so many may miss before a device counts as no substitute. */
    private static final double AS_GOOD = 0.05;

    private static final List<String> BIASED = List.of("source", "emitter", "base", "gate", "gate1", "gate2", "anode");

    private final Tried here;
    private final PartEntry entry;
    private final Stock stock;
    private final Looking looking;
    private final boolean drawerOnly;
    private final Progress progress;

    DeviceSubstitutes(
            Tried here, PartEntry entry, Stock stock, Looking looking, boolean drawerOnly, Progress progress) {
        this.here = here;
        this.entry = entry;
        this.stock = stock;
        this.looking = looking;
        this.drawerOnly = drawerOnly;
        this.progress = progress;
    }

    SubstituteReport.Devices report() throws BadInputException {
        List<String> types = types();
        if (types.isEmpty())
            throw Substitute.refused(
                    entry,
                    "the drawer holds no " + entry.kind().key() + " that the library knows",
                    "With --drawer only devices of drawer.yaml are tried.");
        AtomicInteger done = new AtomicInteger();
        List<SubstituteReport.Row> rows = types.parallelStream()
                .map(type -> {
                    SubstituteReport.Row row = row(type);
                    progress.at(0.1 + 0.6 * done.incrementAndGet() / types.size(), "devices");
                    return row;
                })
                .sorted(Comparator.comparing(SubstituteReport.Row::fit)
                        .thenComparingDouble(r -> -r.yield().orElse(0)))
                .toList();
        List<String> notes = new ArrayList<>();
        if (types.stream().noneMatch(stock::holdsDevice) && stock.hasDevices())
            notes.add("The drawer holds none of them.");
        notes.addAll(Substitute.missed(here));
        notes.add("Each over " + Substitute.COPIES
                + " copies with the preset for depth fully up; pinouts differ: see the sheet.");
        return new SubstituteReport.Devices(
                entry.name(), entry.label(), here.standing().yield(), rows, window(), notes);
    }

    private Optional<DeviceWindow> window() {
        progress.at(0.72, "window of parameters");
        return law().flatMap(law -> WindowSearch.of(law, new Specimen(here, entry, looking)));
    }

    private Optional<Law> law() {
        Circuit circuit = here.running().circuit();
        Part part = circuit.part(entry.name()).orElseThrow();
        if (part instanceof Jfet jfet) return Optional.of(new JfetLaw(jfet.model()));
        if (part instanceof Bipolar bipolar)
            return Optional.of(new BipolarLaw(bipolar.model(), entry.kind() == PartKind.NPN));
        if (part instanceof Diode diode) return Optional.of(new DiodeLaw(diode.junction(), seriesResistance(circuit)));
        if (part instanceof DualGateMosfet fet
                && fet.lower().threshold() < 0
                && fet.upper().threshold() < 0)
            return Optional.of(new DualGateLaw(fet, between("gate1"), between("gate2"), between("output")));
        return Optional.empty();
    }

    private double seriesResistance(Circuit circuit) {
        return circuit.part(Names.resistance(entry.name()))
                .map(part -> ((Resistor) part).resistance())
                .orElse(0.0);
    }

    /** A capacitance that a typed device brings along between its pins, F. */
    private double between(String which) {
        return here.running()
                .circuit()
                .part(entry.name() + "." + which)
                .map(part -> ((Capacitor) part).capacitance())
                .orElse(0.0);
    }

    private List<String> types() {
        List<String> all = Candidates.types(here.build(), entry);
        return drawerOnly ? all.stream().filter(stock::holdsDevice).toList() : all;
    }

    private SubstituteReport.Row row(String type) {
        Optional<Build> build = Candidates.with(here.build(), Map.of(Candidates.key(entry), type));
        if (build.isEmpty()) return unsolved(type, "its sheet lacks what a prediction needs");
        Optional<Tried> asItIs = looking.look(build.get(), here.running()).map(this::drawn);
        if (asItIs.isPresent() && good(asItIs.get())) return row(type, SubstituteReport.Fit.AS_IT_IS, "", asItIs.get());
        Optional<Changed> changed = changed(build.get());
        if (changed.isPresent() && good(changed.get().tried))
            return row(type, SubstituteReport.Fit.WITH_A_CHANGE, changed.get().words, changed.get().tried);
        boolean better = changed.isPresent()
                && (asItIs.isEmpty()
                        || changed.get().tried.standing().yield()
                                > asItIs.get().standing().yield());
        if (better) return row(type, SubstituteReport.Fit.NOT, changed.get().words, changed.get().tried);
        return asItIs.map(t -> row(type, SubstituteReport.Fit.NOT, "", t))
                .orElse(unsolved(type, "it does not oscillate"));
    }

    private static SubstituteReport.Row unsolved(String type, String why) {
        return new SubstituteReport.Row(type, SubstituteReport.Fit.NOT, "", OptionalDouble.empty(), why);
    }

    private SubstituteReport.Row row(String type, SubstituteReport.Fit fit, String change, Tried tried) {
        return new SubstituteReport.Row(
                type,
                fit,
                change,
                OptionalDouble.of(tried.standing().yield()),
                Neighbour.effects(here.typical(), tried.typical()));
    }

    private boolean good(Tried tried) {
        return tried.standing().yield() >= Math.min(Tried.YIELD, here.standing().yield()) - AS_GOOD / 2
                && here.standing()
                        .failing()
                        .keySet()
                        .containsAll(tried.standing().failing().keySet().stream()
                                .filter(l -> !l.ofCopies())
                                .toList());
    }

    /** A few copies first: where most of those fail, more would only tell by how much. */
    private Tried drawn(Tried look) {
        Tried few = looking.draw(look, FEW);
        return few.standing().yield() < HOPELESS ? few : looking.draw(few, Substitute.COPIES);
    }

    private record Changed(String words, double value, Tried tried) {
        double penalty() {
            return tried.standing().penalty();
        }
    }

    /** The resistor that touches the device and, at the right value, makes it serve best: coarse steps first, then fine ones. */
    private Optional<Changed> changed(Build build) {
        List<Changed> looks = new ArrayList<>();
        for (PartEntry resistor : around(build)) {
            double now = resistor.value().orElseThrow().value();
            List<Changed> coarse = looks(build, resistor, Series.E6.between(now / REACH, now * REACH));
            looks.addAll(coarse);
            coarse.stream().min(Comparator.comparingDouble(Changed::penalty)).ifPresent(best -> {
                double value = best.value;
                double up = Series.E12.atLeast(value * 1.01), down = Series.E12.atMost(value / 1.01);
                looks.addAll(looks(build, resistor, List.of(up, down)));
            });
        }
        return looks.stream()
                .sorted(Comparator.comparingDouble(Changed::penalty))
                .limit(DRAWN)
                .map(c -> new Changed(c.words, c.value, drawn(c.tried)))
                .min(Comparator.comparingDouble(Changed::penalty));
    }

    private List<Changed> looks(Build build, PartEntry resistor, List<Double> values) {
        List<Changed> looks = new ArrayList<>();
        for (double value : values) {
            String text = Engineering.exact(value, Unit.OHM);
            String words = resistor.name() + " " + resistor.label() + " → " + text;
            Candidates.with(build, Map.of(Candidates.key(resistor), text))
                    .flatMap(b -> looking.look(b, here.running()))
                    .map(t -> new Changed(words, value, looking.beside(here, t)))
                    .ifPresent(looks::add);
        }
        return looks;
    }

    /** Resistors that set the device's current: at its source or emitter, its base or gate, or its anode; not all those on a rail. */
    private List<PartEntry> around(Build build) {
        Set<String> nets = new HashSet<>();
        for (String pin : BIASED) if (entry.kind().pins().contains(pin)) nets.add(entry.pin(pin));
        nets.remove(Circuit.GROUND);
        build.supply().ifPresent(supply -> nets.remove(supply.plus()));
        return build.parts().values().stream()
                .filter(p -> p.kind() == PartKind.RESISTOR)
                .filter(p -> p.pins().values().stream().anyMatch(nets::contains))
                .toList();
    }
}
