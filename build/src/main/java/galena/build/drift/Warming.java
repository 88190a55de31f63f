package galena.build.drift;

/**
 * The temperature of a build after it is switched on: from one to another as a warm box does it, by an exponential.
 *
 * @param from °C, at switch-on
 * @param to °C, in the end
 * @param timeConstant s, by which 63 % of the way is gone
 */
public record Warming(double from, double to, double timeConstant) {
    public Warming {
        if (!(timeConstant > 0) || Double.isInfinite(timeConstant))
            throw new IllegalArgumentException("a time constant is above zero, not " + timeConstant);
        if (!Double.isFinite(from + to)) throw new IllegalArgumentException("temperatures are finite");
    }

    /** Always the same. @param celsius °C */
    public static Warming none(double celsius) {
        return new Warming(celsius, celsius, 3600);
    }

    /** @param seconds since switch-on @return °C */
    double at(double seconds) {
        return to + (from - to) * Math.exp(-seconds / timeConstant);
    }
}
