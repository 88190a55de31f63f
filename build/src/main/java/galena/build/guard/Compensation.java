package galena.build.guard;

import galena.build.folder.Build;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Part;
import java.util.List;
import java.util.Locale;

/**
 * Which share of the tank's fixed capacitor, of another temperature coefficient, would take the drift out. Coefficients are those
 * that ceramic capacitors of class 1 are sold with (IEC 60384-21; the values from memory): N150 and N750 fall, P100 rises.
 */
final class Compensation {
    private static final double PICOFARAD = 1e-12;

    private record Kind(String name, double coefficient) {}

    private static final List<Kind> KINDS =
            List.of(new Kind("N150", -150e-6), new Kind("N750", -750e-6), new Kind("P100", 100e-6));

    private Compensation() {}

    /**
     * @param perKelvin of the carrier, Hz
     * @return in words that follow "to compensate"; empty without a fixed capacitor that moves the carrier
     */
    static String of(Build build, Circuit circuit, Figures figures, double perKelvin) {
        Capacitor best = null;
        double strongest = 0;
        for (Part part : circuit.parts()) {
            if (!(part instanceof Capacitor c) || build.part(c.name()).isEmpty()) continue;
            double perUnit = c.capacitance()
                    * figures.hertz(at -> at.capacitance(
                            at.equations().net(c.from()), at.equations().net(c.to())));
            if (Math.abs(perUnit) > Math.abs(strongest)) {
                strongest = perUnit;
                best = c;
            }
        }
        if (best == null || perKelvin == 0) return "";
        for (Kind kind : KINDS) {
            double share = -perKelvin / (strongest * (kind.coefficient - best.temperatureCoefficient()));
            if (!(share > 0 && share <= 1)) continue;
            return String.format(
                    Locale.ROOT,
                    "make %s of %s %s and %s of what it is now",
                    farads(share * best.capacitance()),
                    best.name(),
                    kind.name,
                    farads((1 - share) * best.capacitance()));
        }
        return "no share of " + best.name() + " as N150, N750 or P100 would do it: look at the largest cause first";
    }

    private static String farads(double farads) {
        double picofarads = farads / PICOFARAD;
        return String.format(Locale.ROOT, picofarads < 10 ? "%.1f pF" : "%.0f pF", picofarads);
    }
}
