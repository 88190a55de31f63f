package galena.desk.page;

import galena.build.figure.Figure;
import galena.build.folder.LogEntry;
import galena.build.quantity.Quantity;
import galena.desk.writing.Json;
import galena.desk.writing.Words;
import java.util.List;
import java.util.Optional;

/**
 * A reading with its uncertainty over what is predicted of it.
 *
 * @param reading as taken
 * @param predicted with its interval, or why there is none
 * @param agrees whether both can be right; empty where that can't be judged
 */
record Strip(LogEntry reading, Figure predicted, Optional<Boolean> agrees) {
    private static final int FIGURES = 4;

    static void write(Json json, List<Strip> strips) {
        json.each("strips", strips, strip -> strip.fields(json));
    }

    private void fields(Json json) {
        double value = reading.value().value(), half = half();
        json.text("label", reading.what().inWords())
                .text("at", reading.at().orElse(""))
                .text(
                        "measuredWords",
                        reading.value().text().replace('-', '−')
                                + reading.uncertainty()
                                        .map(u -> " ± " + u.text())
                                        .orElse(""))
                .number("measured", value)
                .number("measuredLow", value - half)
                .number("measuredHigh", value + half);
        json.text(
                "predictedWords",
                predicted instanceof Figure.Known known
                        ? words(known)
                        : "none: " + ((Figure.Missing) predicted).reason());
        if (predicted instanceof Figure.Known k)
            json.number("predicted", k.value()).number("low", k.low()).number("high", k.high());
        json.text("verdict", agrees.map(a -> a ? "fits" : "apart").orElse("not judged"));
    }

    /** As it stands in the log, with its uncertainty. */
    static String measured(LogEntry reading) {
        return reading.value().text().replace('-', '−')
                + reading.uncertainty().map(u -> " ± " + u.text()).orElse("");
    }

    /** One digit finer than elsewhere: a reading near an end of the interval must be seen on its own side of it. */
    private static String words(Figure.Known k) {
        String low = Words.number(k.low(), k.unit(), FIGURES), high = Words.number(k.high(), k.unit(), FIGURES);
        String unit = low.substring(low.lastIndexOf(' ') + 1);
        String from = high.endsWith(" " + unit) ? low.substring(0, low.lastIndexOf(' ')) : low;
        return from + " to " + high + ", typically " + Words.number(k.value(), k.unit(), FIGURES);
    }

    private double half() {
        return reading.uncertainty().map(Quantity::value).orElse(0.0);
    }
}
