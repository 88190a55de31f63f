package galena.engine.startup;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.operating.OperatingPoint;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Resonator;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether and how one mode starts by itself from the operating point.
 *
 * @param mode the mode; under the least load that makes it one, where the drive is so strong that it would not turn round
 * @param holding the mode as it is under the extra conductance that just holds it
 * @param site where its energy is and extra loss is thought of
 * @param extraConductance siemens across the site that would just hold it; below zero: that much loss must go
 * @param lossConductance the losses that damp the mode, as one conductance across the site, siemens
 * @param shares each part's share of all losses, 0 to 1, largest first; feeding parts have shares below zero
 */
public record Startup(
        Mode mode,
        Mode holding,
        Site site,
        double extraConductance,
        double lossConductance,
        Map<String, Double> shares) {
    private static final int NEWTON_STEPS = 60;
    private static final int MOST_HALVINGS = 12;

    /** A mode moves at most by this share of its frequency in one step, so that it is known again afterwards. */
    private static final double STRIDE = 0.05;

    private static final double TUNED = 1e-9;
    private static final double LIGHTEST_LOAD = 1e-6;
    private static final double HEAVIEST_LOAD = 1;
    private static final double LOAD_STEP = 1.25;

    public Startup {
        shares = Collections.unmodifiableMap(new LinkedHashMap<>(shares));
    }

    /** The startup margin: extra loss it could carry over the loss it has; below zero when it does not start. */
    public double margin() {
        return extraConductance / lossConductance;
    }

    /** True when the mode grows. */
    public boolean grows() {
        return mode.growth() > 0;
    }

    /** Seconds to grow from one amplitude to another at the small-signal rate; infinite when it does not grow. */
    public double timeToGrow(double from, double to) {
        return grows() ? Math.log(to / from) / mode.growth() : Double.POSITIVE_INFINITY;
    }

    /** The startup of the readiest mode, or of none when nothing can oscillate. */
    public static Optional<Startup> readiest(OperatingPoint.Found point) {
        Linearised linearised = Linearised.at(point.equations(), point.x());
        Optional<Mode> first = linearised.modes().stream().findFirst();
        if (first.isEmpty() || first.get().growth() <= 0) {
            Optional<Startup> overdriven = overdriven(point, linearised);
            if (overdriven.isPresent()) return overdriven;
        }
        return first.map(mode -> of(point, linearised, mode));
    }

    /** The startup of one mode of the linearised circuit. */
    public static Startup of(OperatingPoint.Found point, Linearised linearised, Mode mode) {
        return of(point, linearised, mode, site(point.equations(), linearised, mode), 0);
    }

    /**
     * A drive so strong that a disturbance runs off before it has turned round once (two real growing eigenvalues in place of a
     * pair, as at μ above 2 in van der Pol's equation) still ends in an oscillation. Its mode is taken to be that under the least
     * load across a coil or resonator at which it turns round.
     */
    private static Optional<Startup> overdriven(OperatingPoint.Found point, Linearised linearised) {
        if (linearised.runaways().length < 2) return Optional.empty();
        Equations equations = point.equations();
        for (double siemens = LIGHTEST_LOAD; siemens < HEAVIEST_LOAD; siemens *= LOAD_STEP) {
            for (Part part : equations.circuit().parts()) {
                if (!(part instanceof Coil || part instanceof Resonator)) continue;
                int a = equations.net(part.nets().get(0)),
                        b = equations.net(part.nets().get(1));
                Optional<Mode> first =
                        linearised.loaded(a, b, siemens).modes().stream().findFirst();
                if (first.isPresent() && first.get().growth() > 0) {
                    return Optional.of(of(point, linearised, first.get(), new Site(part.name(), a, b), siemens));
                }
            }
        }
        return Optional.empty();
    }

    /** @param load siemens across the site under which the mode is one */
    private static Startup of(OperatingPoint.Found point, Linearised linearised, Mode mode, Site site, double load) {
        Map<String, Double> dampings = dampings(point, linearised, mode);
        double loss = dampings.values().stream()
                .filter(d -> d > 0)
                .mapToDouble(d -> d)
                .sum();
        Map<String, Double> shares = new LinkedHashMap<>();
        dampings.entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -e.getValue()))
                .forEach(e -> shares.put(e.getKey(), e.getValue() / loss));
        double slope = linearised.sensitivityToConductance(mode, site.a(), site.b())[0];
        Held held = hold(linearised, mode, site, load);
        return new Startup(mode, held.mode, site, held.siemens, loss / Math.abs(slope), shares);
    }

    /**
     * What each part takes from the mode's growth, 1/s, by left and right vectors: a tank that is only driven dissipates, but its
     * left vector is zero and its loss does not damp the oscillation.
     */
    private static Map<String, Double> dampings(OperatingPoint.Found point, Linearised linearised, Mode mode) {
        Equations equations = point.equations();
        Evaluation work = equations.newEvaluation();
        Map<String, Double> dampings = new LinkedHashMap<>();
        for (Part part : equations.circuit().parts()) {
            double damping = -linearised.growthBy(part.name(), point.x(), mode, work);
            if (damping != 0) dampings.put(part.name(), damping);
        }
        return dampings;
    }

    /**
     * The coil or resonator whose loss the mode feels most: |∂λ/∂g| / (ω² L), a half for the coil of a lone tank. A tank that is
     * only driven may hold more of the mode's energy, but its loss does not stop the oscillation. Without coils, the net where a
     * conductance to ground tells most.
     */
    static Site site(Equations equations, Linearised linearised, Mode mode) {
        Site best = null;
        double most = 0;
        for (Part part : equations.circuit().parts()) {
            double henries;
            if (part instanceof Coil coil) henries = coil.inductance();
            else if (part instanceof Resonator resonator) henries = resonator.motionalInductance();
            else continue;
            int a = equations.net(part.nets().get(0)),
                    b = equations.net(part.nets().get(1));
            double felt = part instanceof Resonator
                    ? feltInSeries(equations, linearised, mode, part, henries)
                    : felt(linearised, mode, a, b) / henries;
            if (felt > most) {
                most = felt;
                best = new Site(part.name(), a, b);
            }
        }
        if (best != null) return best;
        int widest = 1;
        for (int k = 2; k <= equations.nets(); k++) {
            if (felt(linearised, mode, k, 0) > felt(linearised, mode, widest, 0)) widest = k;
        }
        return new Site(equations.name(widest), widest, 0);
    }

    /** The coil or resonator that holds most of a mode's magnetic energy; empty without any. */
    public static String mostStored(Equations equations, Mode mode) {
        String best = "";
        double most = 0;
        for (Part part : equations.circuit().parts()) {
            double henries;
            if (part instanceof Coil coil) henries = coil.inductance();
            else if (part instanceof Resonator resonator) henries = resonator.motionalInductance();
            else continue;
            double energy =
                    henries * mode.squareAcross(equations.current(part.name()).orElseThrow(), 0);
            if (energy > most) {
                most = energy;
                best = part.name();
            }
        }
        return best;
    }

    private static double felt(Linearised linearised, Mode mode, int a, int b) {
        double[] slope = linearised.sensitivityToConductance(mode, a, b);
        return Math.hypot(slope[0], slope[1]);
    }

    /** The same of a resonator, whose holder hides most of a loss across it: loss in series with its inductance tells. */
    private static double feltInSeries(
            Equations equations, Linearised linearised, Mode mode, Part resonator, double henries) {
        int current = equations.current(resonator.name()).orElseThrow();
        double omega = mode.angular();
        return felt(linearised, mode, current, 0) * henries * omega * omega;
    }

    private record Held(double siemens, Mode mode) {}

    /**
     * The conductance across the site at which the mode neither grows nor dies, by Newton on Re λ. A step is halved until growth
     * has come nearer to zero and still falls or rises with the conductance as it did: across a quartz a little loss is felt
     * little, some more a great deal, and much, which shorts it, hardly at all.
     */
    private static Held hold(Linearised linearised, Mode mode, Site site, double load) {
        double siemens = load;
        Mode now = mode;
        double[] slope = linearised.loaded(site.a(), site.b(), load).sensitivityToConductance(now, site.a(), site.b());
        for (int k = 0; k < NEWTON_STEPS; k++) {
            double step = -now.growth() / slope[0];
            double stride = Math.abs(step) * Math.hypot(slope[0], slope[1]) / (STRIDE * now.angular());
            if (stride > 1) step /= stride;
            if (!Double.isFinite(siemens + step))
                return new Held(siemens + step, now); // the mode does not feel loss here
            Mode there = now;
            double[] slopeThere = slope;
            for (int halving = 0; halving <= MOST_HALVINGS; halving++) {
                Linearised loaded = linearised.loaded(site.a(), site.b(), siemens + step);
                // where this mode is expected, not where it was: on the way it may pass close by a driven tank's mode
                there = nearest(loaded.modes(), now.growth() + step * slope[0], now.angular() + step * slope[1], now);
                slopeThere = loaded.sensitivityToConductance(there, site.a(), site.b());
                boolean nearer = Math.abs(there.growth()) <= Math.abs(now.growth());
                if (nearer && slopeThere[0] * slope[0] > 0) break;
                step /= 2;
            }
            siemens += step;
            now = there;
            slope = slopeThere;
            if (Math.abs(step) <= TUNED * Math.abs(siemens)) break;
        }
        return new Held(siemens, now);
    }

    private static Mode nearest(List<Mode> modes, double growth, double angular, Mode otherwise) {
        return modes.stream()
                .min(Comparator.comparingDouble(m -> Math.hypot(m.angular() - angular, m.growth() - growth)))
                .orElse(otherwise);
    }
}
