package galena.bench.measure;

import galena.signal.Estimate;
import galena.signal.modulation.Depth;
import java.util.Optional;

/**
 * Depth from heights read off a screen in divisions, peak to peak: A at the crest and B at the trough, or the two sides of
 * a trapezoid.
 *
 * @param depth (A − B)/(A + B), a fraction
 * @param positivePeak if the unmodulated height is known, a fraction
 * @param negativePeak if the unmodulated height is known, a fraction
 */
public record ScreenDivisions(Estimate depth, Optional<Estimate> positivePeak, Optional<Estimate> negativePeak) {
    /** A height is read to a fifth of a small division, 0.04, at each end and the trace has a width: common practice. */
    public static final double USUAL_ERROR = 0.1;

    /**
     * @param crest height at the crest (divisions)
     * @param trough height at the trough (divisions), 0 if the trace closes
     * @param unmodulated height without modulation (divisions), if it was read
     * @param error of each reading (divisions), 95 %
     */
    public static ScreenDivisions of(double crest, double trough, Optional<Double> unmodulated, double error) {
        if (!(crest > 0) || !(trough >= 0) || !(trough <= crest) || !(error >= 0) || Double.isInfinite(crest + error)) {
            throw new IllegalArgumentException("Heights are positive divisions, the trough not above the crest");
        }
        if (unmodulated.isPresent() && !(unmodulated.get() > error)) {
            throw new IllegalArgumentException("The unmodulated height must be more than its error");
        }
        Estimate a = read(crest, error), b = read(trough, error);
        Estimate depth = Propagation.of(x -> Depth.symmetrical(x[0], Math.max(0, x[1])), a, b);
        Optional<Estimate> c = unmodulated.map(h -> read(h, error));
        return new ScreenDivisions(
                depth,
                c.map(h -> Propagation.of(x -> Depth.positivePeak(x[0], x[1]), a, h)),
                c.map(h -> Propagation.of(x -> Depth.negativePeak(Math.max(0, x[0]), x[1]), b, h)));
    }

    private static Estimate read(double height, double error) {
        return new Estimate(height, height - error, height + error);
    }
}
