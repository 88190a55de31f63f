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
import org.jspecify.annotations.Nullable;

/**
 * Whether and how one mode starts by itself from the operating point.
 *
 * @param mode the mode; under the least load that makes it one, where the drive is so strong that it would not turn round
 * @param holding the mode as it is under the extra conductance that just holds it
 * @param site where its energy is and extra loss is thought of
 * @param extraConductance siemens across the site that would just hold it; below zero: that much loss must go
 * @param lossConductance the losses of the passive parts, referred to the site, siemens
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

    /** A mode moves at most by this share of its frequency in one step, so that it is known again afterwards. */
    private static final double STRIDE = 0.05;

    private static final double TUNED = 1e-9;
    private static final double STANDING = 1e-6;
    private static final double LEAST_SCANNED = 1e-9;
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
        Map<String, Double> powers = powers(point, mode);
        double loss =
                powers.values().stream().filter(p -> p > 0).mapToDouble(p -> p).sum();
        Map<String, Double> shares = new LinkedHashMap<>();
        powers.entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -e.getValue()))
                .forEach(e -> shares.put(e.getKey(), e.getValue() / loss));
        double lossConductance = 2 * loss / mode.squareAcross(site.a(), site.b());
        Held held = hold(linearised, mode, site, load);
        return new Startup(mode, held.mode, site, held.siemens, lossConductance, shares);
    }

    private static Map<String, Double> powers(OperatingPoint.Found point, Mode mode) {
        Equations equations = point.equations();
        Evaluation work = equations.newEvaluation();
        Map<String, Double> powers = new LinkedHashMap<>();
        for (Part part : equations.circuit().parts()) {
            double watts = equations.smallSignalPower(part.name(), point.x(), mode.re(), mode.im(), work);
            if (watts != 0) powers.put(part.name(), watts);
        }
        return powers;
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
            double felt = felt(linearised, mode, a, b) / henries;
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

    private record Held(double siemens, Mode mode) {
        boolean settled() {
            return Double.isFinite(siemens) && Math.abs(mode.growth()) <= STANDING * mode.angular();
        }
    }

    /**
     * The conductance across the site at which the mode neither grows nor dies, by Newton on Re λ. An overdriven quartz grows
     * faster with some load than with none and sends Newton the wrong way: then the load is raised step by step.
     */
    private static Held hold(Linearised linearised, Mode mode, Site site, double load) {
        Held held = newton(linearised, mode, site, load);
        if (held.settled()) return held;
        Held near = scan(linearised, mode, site, load);
        return near == null ? held : newton(linearised, near.mode, site, near.siemens);
    }

    private static Held newton(Linearised linearised, Mode mode, Site site, double load) {
        double siemens = load;
        Mode now = mode;
        Linearised loaded = linearised.loaded(site.a(), site.b(), load);
        for (int k = 0; k < NEWTON_STEPS && Double.isFinite(siemens); k++) {
            double[] slope = loaded.sensitivityToConductance(now, site.a(), site.b());
            double step = -now.growth() / slope[0];
            double stride = Math.abs(step) * Math.hypot(slope[0], slope[1]) / (STRIDE * now.angular());
            if (stride > 1) step /= stride;
            siemens += step;
            loaded = linearised.loaded(site.a(), site.b(), siemens);
            // where this mode is expected, not where it was: on the way it may pass close by a driven tank's mode
            now = nearest(loaded.modes(), now.growth() + step * slope[0], now.angular() + step * slope[1], now);
            if (Math.abs(step) <= TUNED * Math.abs(siemens)) break;
        }
        return new Held(siemens, now);
    }

    /** Follows the mode under more and more load, or less and less when it dies, until it turns; the place just beyond. */
    private static @Nullable Held scan(Linearised linearised, Mode mode, Site site, double load) {
        double sign = Math.signum(mode.growth());
        Mode now = mode;
        double siemens = load;
        for (double more = LEAST_SCANNED; more < HEAVIEST_LOAD; more *= LOAD_STEP) {
            Linearised here = linearised.loaded(site.a(), site.b(), siemens);
            double[] slope = here.sensitivityToConductance(now, site.a(), site.b());
            double next = load + sign * more, step = next - siemens;
            List<Mode> modes = linearised.loaded(site.a(), site.b(), next).modes();
            Mode there = nearest(modes, now.growth() + step * slope[0], now.angular() + step * slope[1], now);
            if (Math.signum(there.growth()) != sign) return new Held(next, there);
            now = there;
            siemens = next;
        }
        return null;
    }

    private static Mode nearest(List<Mode> modes, double growth, double angular, Mode otherwise) {
        return modes.stream()
                .min(Comparator.comparingDouble(m -> Math.hypot(m.angular() - angular, m.growth() - growth)))
                .orElse(otherwise);
    }
}
