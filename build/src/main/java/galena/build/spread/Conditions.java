package galena.build.spread;

/**
 * The range of conditions that builds are drawn over.
 *
 * @param coldest °C
 * @param warmest °C
 * @param flattest state of charge of a battery at its flattest, 0 to 1
 */
public record Conditions(double coldest, double warmest, double flattest) {
    /** −10 to +50 °C, battery fresh to nearly flat. */
    public static final Conditions FULL = new Conditions(-10, 50, 0.1);

    public Conditions {
        if (!(coldest <= warmest))
            throw new IllegalArgumentException("temperature runs from " + coldest + " to " + warmest);
        if (!(flattest >= 0 && flattest <= 1)) throw new IllegalArgumentException("a charge lies within 0 and 1");
    }

    double temperature(double u) {
        return coldest + u * (warmest - coldest);
    }

    double charge(double u) {
        return flattest + u * (1 - flattest);
    }
}
