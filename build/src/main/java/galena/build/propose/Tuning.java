package galena.build.propose;

import galena.build.attempt.Draft;
import galena.build.attempt.Looking;
import galena.build.attempt.OutputTank;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.Drawer.CoilHeld;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.predict.Running;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.engine.equations.Equations;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Trimmer;
import galena.engine.startup.Mode;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Family;
import galena.engine.steady.Retrim;
import galena.engine.steady.Watch;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Brings a build on its channel as the trade would: the oscillator's coil (or the capacitor beside its trimmer, where the coil is
 * the aerial) is solved for with the trimmer in its middle, then the trimmer itself; the output tank by the capacitance that its
 * resonance lacks.
 */
final class Tuning {
    /** Trimmer positions between these are left alone. */
    private static final double LOW = 0.25, HIGH = 0.75;

    private static final double MIDDLE = 0.5;
    private static final double[] COIL_SCALE = {0.2, 4};
    private static final double[] CAPACITOR_SCALE = {0.02, 8};
    private static final int MOST_ROUNDS = 3;

    private final Looking looking;
    private final Stock stock;
    private final OnHand onHand;
    private final Watch watch;

    Tuning(Looking looking, Stock stock, OnHand onHand, Watch watch) {
        this.looking = looking;
        this.stock = stock;
        this.onHand = onHand;
        this.watch = watch;
    }

    /** The build on its channel and read; as near as it comes where something stands in the way; empty where nothing runs. */
    Optional<Tried> tuned(Build build) {
        return tuned(looking.running(build));
    }

    /** The same, followed from a neighbour's carrier. */
    Optional<Tried> tuned(Build build, Running neighbour) {
        return tuned(looking.running(build, neighbour));
    }

    private Optional<Tried> tuned(Optional<Running> start) {
        Optional<Running> running = start;
        for (int round = 0; round < MOST_ROUNDS && running.isPresent(); round++) {
            Map<String, String> changes = new HashMap<>();
            carrier(running.get(), changes);
            output(running.get(), changes);
            if (changes.isEmpty()) break;
            try {
                running = looking.running(Draft.with(running.get().build(), changes), running.get());
            } catch (BadInputException impossible) {
                throw new IllegalStateException("a tuned build can't be read: " + impossible.getMessage(), impossible);
            }
        }
        return running.map(looking::look);
    }

    private void carrier(Running running, Map<String, String> changes) {
        String trimmer = running.strongestTrimmer();
        if (trimmer.isEmpty()) return;
        double wanted = looking.aim().carrier(), position = running.position(trimmer);
        Trimmer part = (Trimmer) running.circuit().part(trimmer).orElseThrow();
        Family turned = p -> Equations.of(running.circuit().with(part.at(p)));
        Retrim retrim = new Retrim(Accuracy.LIVE, watch);
        Retrim.Outcome outcome = retrim.toFrequency(turned, 0, 1, position, running.state(), wanted);
        double found = outcome instanceof Retrim.Trimmed there ? there.parameter() : -1;
        if ((found >= LOW && found <= HIGH)
                || (found >= 0 && tuner(running, trimmer).isEmpty())) {
            set(running.build(), trimmer, found, position, changes);
            return;
        }
        tuner(running, trimmer).ifPresent(tuner -> solved(running, tuner, part, wanted, changes));
    }

    private static void set(Build build, String name, double found, double now, Map<String, String> changes) {
        double rounded = Math.round(100 * found) / 100.0;
        if (Math.abs(rounded - now) < 0.005) return;
        changes.put(build.part(name).orElseThrow().path() + ".set", Math.round(100 * rounded) + " %");
    }

    /** What is made to fit the channel: the coil that holds the oscillation where it is wound, else the capacitor beside the trimmer. */
    private Optional<PartEntry> tuner(Running running, String trimmer) {
        Build build = running.build();
        Optional<PartEntry> coil = build.part(running.startup().site().part());
        if (coil.isPresent()
                && coil.get().kind() == PartKind.COIL
                && coil.get().value().isPresent()
                && stock.coil(coil.get().value().get().value()).isEmpty()) return coil;
        if (coil.isEmpty() || !coil.get().kind().isCoil()) return Optional.empty();
        Set<String> ends = Set.copyOf(build.part(trimmer).orElseThrow().pins().values());
        return build.parts().values().stream()
                .filter(p -> p.kind() == PartKind.CAPACITOR
                        && Set.copyOf(p.pins().values()).equals(ends))
                .findFirst();
    }

    private void solved(Running running, PartEntry tuner, Trimmer trimmer, double wanted, Map<String, String> changes) {
        boolean isCoil = tuner.kind() == PartKind.COIL;
        double[] ends = isCoil ? COIL_SCALE : CAPACITOR_SCALE;
        Part part = running.circuit().part(tuner.name()).orElseThrow();
        Family scaled = s -> Equations.of(running.circuit()
                .with(trimmer.at(MIDDLE))
                .with(part instanceof Coil coil ? coil.scaled(s, s) : ((Capacitor) part).scaled(s)));
        Retrim.Outcome outcome =
                new Retrim(Accuracy.LIVE, watch).toFrequency(scaled, ends[0], ends[1], 1, running.state(), wanted);
        double scale = outcome instanceof Retrim.Trimmed there
                ? there.parameter()
                : outcome instanceof Retrim.OutOfRange stop ? stop.stop() : 1;
        double value = scale * tuner.value().orElseThrow().value();
        if (isCoil) coil(running.build(), tuner, value, changes);
        else capacitor(tuner, value, changes);
    }

    /** The coil as it is had: the drawer's nearest, or wound. */
    void coil(Build build, PartEntry tuner, double henries, Map<String, String> changes) {
        Optional<CoilHeld> held = stock.coil(henries);
        if (held.isPresent()) {
            String q = held.get().q().map(at -> ", q: " + at).orElse("");
            replace(
                    build,
                    tuner,
                    "coil: " + held.get().inductance() + q + ", tolerance: 5 %, tempco: 50 ppm/K",
                    changes);
            return;
        }
        onHand.tube(henries).ifPresent(w -> replace(build, tuner, w.keys(), changes));
    }

    /** The part with other keys before its pins. */
    static void replace(Build build, PartEntry part, String keys, Map<String, String> changes) {
        StringBuilder text = new StringBuilder("{").append(keys);
        part.pins()
                .forEach(
                        (pin, net) -> text.append(", ").append(pin).append(": ").append(net));
        String now = build.file().text();
        String whole = text.append('}').toString();
        if (!now.contains(whole)) changes.put(part.path(), whole);
    }

    private void capacitor(PartEntry tuner, double farads, Map<String, String> changes) {
        double value = stock.nearest(PartKind.CAPACITOR, Math.max(farads, 4.7e-12));
        if (Math.abs(value / tuner.value().orElseThrow().value() - 1) < 1e-6) return;
        changes.put(tuner.path() + ".capacitor", Engineering.exact(value, Unit.FARAD));
    }

    private void output(Running running, Map<String, String> changes) {
        Build build = running.build();
        Optional<Mode> mode = OutputTank.mode(running);
        Optional<PartEntry> trimmer = OutputTank.across(build, PartKind.TRIMMER, running.strongestTrimmer());
        if (mode.isEmpty() || trimmer.isEmpty()) return;
        Range range = trimmer.get().range().orElseThrow();
        double span = range.high().value() - range.low().value();
        double now = trimmer.get().position().orElseThrow();
        double missing = OutputTank.missing(running, mode.get(), looking.aim().carrier());
        double position = now + missing / span;
        Optional<PartEntry> fixed = OutputTank.across(build, PartKind.CAPACITOR, "");
        if ((position < LOW || position > HIGH) && fixed.isPresent()) {
            double farads = fixed.get().value().map(Quantity::value).orElseThrow();
            double whole = farads + missing + (now - MIDDLE) * span;
            double value = stock.nearest(PartKind.CAPACITOR, Math.max(whole, 4.7e-12));
            changes.put(fixed.get().path() + ".capacitor", Engineering.exact(value, Unit.FARAD));
            position = MIDDLE + (whole - value) / span;
        }
        set(build, trimmer.get().name(), Math.max(0.02, Math.min(0.98, position)), now, changes);
    }
}
