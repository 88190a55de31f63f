package galena.build.substitute;

import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.engine.part.Jfet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The JFETs that work, in saturation current and pinch-off, and in what a voltmeter shows across two source resistors. A small one is
 * read near the saturation current, a large one near pinch-off; two readings give both, for the square law makes the root of the
 * current fall in proportion to the voltage.
 */
final class JfetWindow {
    private static final double SMALL = 100, LARGE = 10e3;
    private static final double SUPPLY = 9;
    private static final double FARTHEST = 6;
    private static final int SHRINKS = 4;

    private final Specimen specimen;
    private final Jfet.Model typical;

    private JfetWindow(Specimen specimen, Jfet.Model typical) {
        this.specimen = specimen;
        this.typical = typical;
    }

    /** Empty where even the typical specimen does not work. */
    static Optional<DeviceWindow> of(Tried here, PartEntry entry, Looking looking) {
        Jfet part = (Jfet) here.running().circuit().part(entry.name()).orElseThrow();
        return new JfetWindow(new Specimen(here, entry, looking), part.model()).window();
    }

    private boolean works(double saturation, double pinchOff) {
        return specimen.works(Specimen.text(typical, saturation, pinchOff));
    }

    private Optional<DeviceWindow> window() {
        double i = typical.saturationCurrent(), v = typical.pinchOff();
        if (!works(i, v)) return Optional.empty();
        Figure iLow = Edge.find(i, i / FARTHEST, x -> works(x, v), Unit.AMPERE, "least saturation current");
        Figure iHigh = Edge.find(i, i * FARTHEST, x -> works(x, v), Unit.AMPERE, "most saturation current");
        Figure vLow = Edge.find(v, v / FARTHEST, x -> works(i, x), Unit.VOLT, "shallowest pinch-off");
        Figure vHigh = Edge.find(v, v * FARTHEST, x -> works(i, x), Unit.VOLT, "deepest pinch-off");
        List<DeviceWindow.Axis> axes = List.of(
                new DeviceWindow.Axis("saturation current at this pinch-off", typical(i, Unit.AMPERE), iLow, iHigh),
                new DeviceWindow.Axis("pinch-off at this saturation current", typical(v, Unit.VOLT), vLow, vHigh));
        double[] small = {
            reading(Edge.value(iLow, i / FARTHEST), v, SMALL), reading(Edge.value(iHigh, i * FARTHEST), v, SMALL)
        };
        double[] large = {
            reading(i, Edge.value(vLow, v / FARTHEST), LARGE), reading(i, Edge.value(vHigh, v * FARTHEST), LARGE)
        };
        return Optional.of(new DeviceWindow(axes, test(small, large)));
    }

    private static Figure typical(double value, Unit unit) {
        return new Figure.Known(value, unit, value, value, "typical of the type that stands there", "typical", "");
    }

    private Jfet.Model model(double saturation, double pinchOff) {
        return new Jfet.Model(
                saturation, pinchOff, typical.channelLengthModulation(), typical.gateSource(), typical.gateDrain());
    }

    private double reading(double saturation, double pinchOff, double resistor) {
        return TestCircuit.sourceVoltage(model(saturation, pinchOff), SUPPLY, resistor);
    }

    /** The readings' window, drawn in towards the typical device until all four of its corners work. */
    private DeviceWindow.Test test(double[] small, double[] large) {
        double i = typical.saturationCurrent(), v = typical.pinchOff();
        double atSmall = reading(i, v, SMALL), atLarge = reading(i, v, LARGE);
        for (int k = 0; k < SHRINKS; k++) {
            double share = 1 - (double) k / SHRINKS;
            double[] a = {towards(atSmall, small[0], share), towards(atSmall, small[1], share)};
            double[] b = {towards(atLarge, large[0], share), towards(atLarge, large[1], share)};
            if (cornersWork(a, b))
                return test(
                        atSmall,
                        a,
                        atLarge,
                        b,
                        "Devices at all four corners of the two readings were solved in the build, and work"
                                + (k == 0
                                        ? "."
                                        : "; the windows were drawn in to " + Math.round(100 * share)
                                                + " % for that."));
        }
        double[] a = {atSmall, atSmall}, b = {atLarge, atLarge};
        return test(atSmall, a, atLarge, b, "The corners work for no window worth naming: match the typical readings.");
    }

    private static double towards(double from, double to, double share) {
        return from * Math.pow(to / from, share);
    }

    private boolean cornersWork(double[] small, double[] large) {
        for (double a : small)
            for (double b : large) {
                Optional<double[]> device = device(a, b);
                if (device.isPresent() && !works(device.get()[0], device.get()[1])) return false;
            }
        return true;
    }

    /**
     * Saturation current and pinch-off of the square-law device that shows two readings: √I = √I₀·(1 − V/|VP|) twice, linear in 1/√I₀
     * and 1/|VP|. Empty where no device shows both. Channel-length modulation is taken out at each drain voltage.
     */
    private Optional<double[]> device(double small, double large) {
        double lambda = typical.channelLengthModulation();
        double p = Math.sqrt(small / SMALL / (1 + lambda * (SUPPLY - small)));
        double q = Math.sqrt(large / LARGE / (1 + lambda * (SUPPLY - large)));
        // p·a + small·b = 1, q·a + large·b = 1
        double det = p * large - q * small;
        double a = (large - small) / det, b = (p - q) / det;
        if (!(det > 0 && a > 0 && b > 0)) return Optional.empty();
        return Optional.of(new double[] {1 / (a * a), -1 / b});
    }

    private static DeviceWindow.Test test(
            double atSmall, double[] small, double atLarge, double[] large, String proof) {
        List<String> steps = List.of(
                String.format(
                        Locale.ROOT,
                        "Drain to +%.0f V, gate to 0 V, source through %s to 0 V; read the volts across the resistor.",
                        SUPPLY,
                        Engineering.exact(SMALL, Unit.OHM)),
                "Then the same with " + Engineering.exact(LARGE, Unit.OHM) + ".");
        return new DeviceWindow.Test(
                steps, List.of(window(atSmall, small, SMALL), window(atLarge, large, LARGE)), proof);
    }

    private static Figure.Known window(double typical, double[] ends, double resistor) {
        return new Figure.Known(
                typical,
                Unit.VOLT,
                Math.min(typical, Math.min(ends[0], ends[1])),
                Math.max(typical, Math.max(ends[0], ends[1])),
                "test circuit solved",
                "volts across " + Engineering.exact(resistor, Unit.OHM),
                "");
    }
}
