package galena.desk.page;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import java.util.Optional;

/** What somebody has typed into the page, read; a slip is told with the field as its place. */
final class Typed {
    private static final double ZERO_CELSIUS = 273.15;

    private Typed() {}

    /** A quantity within limits, in SI. */
    static double quantity(String field, String text, Unit unit, double low, double high, String rule)
            throws BadInputException {
        try {
            double value = Quantity.read(text, unit).value();
            if (low <= value && value <= high) return value;
            throw bad(field, '"' + text.strip() + "\" is out of range", rule, Optional.empty());
        } catch (BadQuantity bad) {
            throw bad(field, bad.found(), bad.rule(), bad.nearest().map(n -> "Nearest: " + n));
        }
    }

    static double position(String field, String text) throws BadInputException {
        return quantity(field, text, Unit.FRACTION, 0, 1, "An adjustment stands between 0 % and 100 %.");
    }

    /** °C. */
    static double celsius(String text) throws BadInputException {
        String rule = "A temperature is written as 5 °C, from −50 °C to 100 °C.";
        return quantity("temperature", text, Unit.KELVIN, ZERO_CELSIUS - 50, ZERO_CELSIUS + 100, rule) - ZERO_CELSIUS;
    }

    static double volts(String text) throws BadInputException {
        return quantity(
                "supply", text, Unit.VOLT, 0.1, 60, "A supply voltage is written as 7.2 V, from 0.1 V to 60 V.");
    }

    static BadInputException bad(String field, String found, String rule, Optional<String> remedy) {
        return new BadInputException(new Problem(new Place(field, 1, 1), "", found, rule, remedy));
    }
}
