package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.Settings;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.desk.console.Terminal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that lay something over a build without editing it. */
final class Conditions {
    private static final double ZERO_CELSIUS = 273.15;
    private static final double COLDEST = -50;
    private static final double HOTTEST = 100;

    @Option(
            names = "--set",
            paramLabel = "PART=POSITION",
            description = "Set an adjustment for this question, as in --set Ct=40%%. Repeat for more.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--temperature",
            paramLabel = "T",
            description = "Ask at another temperature, as in --temperature 5°C.")
    private Optional<String> temperature = Optional.empty();

    @Option(
            names = "--probe",
            paramLabel = "POINT",
            description = "Connect the probe of a test point. Repeat for more.")
    private List<String> probes = new ArrayList<>();

    @Option(names = "--uncalibrated", description = "Leave an accepted calibration out.")
    private boolean uncalibrated;

    /** The same, with a word on the calibration where one is laid over. */
    Overlay over(BuildFolder folder, Terminal terminal) throws BadInputException {
        Overlay overlay = over(folder);
        overlay.calibration()
                .ifPresent(c -> terminal.remark("the calibration accepted on " + c.accepted()
                        + " is laid over the build; --uncalibrated leaves it out"));
        return overlay;
    }

    /** The overlay asked for; the builder's accepted calibration is part of it unless left out. */
    Overlay over(BuildFolder folder) throws BadInputException {
        Overlay overlay = Settings.apply(folder.build(), Overlay.NONE, "--set", settings);
        if (!uncalibrated && folder.calibration().isPresent())
            overlay = overlay.withCalibration(folder.calibration().get());
        if (temperature.isPresent()) overlay = overlay.atTemperature(celsius("--temperature", temperature.get()));
        for (String point : probes) {
            if (!folder.build().points().containsKey(point)) throw noSuchPoint(folder, point);
            overlay = overlay.probing(point);
        }
        return overlay;
    }

    /** The temperature asked for, °C. */
    Optional<Double> celsius() throws BadInputException {
        return temperature.isEmpty() ? Optional.empty() : Optional.of(celsius("--temperature", temperature.get()));
    }

    static double celsius(String option, String text) throws BadInputException {
        String rule = "A temperature is written as 5 °C, from −50 °C to 100 °C.";
        Place place = new Place(option, 1, 1);
        try {
            double celsius = Quantity.read(text, Unit.KELVIN).value() - ZERO_CELSIUS;
            if (celsius >= COLDEST && celsius <= HOTTEST) return celsius;
            throw new BadInputException(new Problem(place, "", '"' + text + "\" is out of range", rule));
        } catch (BadQuantity bad) {
            throw new BadInputException(
                    new Problem(place, "", bad.found(), rule, bad.nearest().map(n -> "Nearest: " + n)));
        }
    }

    private static BadInputException noSuchPoint(BuildFolder folder, String point) {
        String known = folder.build().points().isEmpty()
                ? "The build has no test points."
                : "Test points: " + String.join(", ", folder.build().points().keySet()) + ".";
        return new BadInputException(
                new Problem(new Place("--probe", 1, 1), "", "no test point is named \"" + point + '"', known));
    }
}
