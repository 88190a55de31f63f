package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Choice;
import galena.build.form.Field;
import galena.build.form.Filled;
import galena.build.form.Form;
import galena.build.form.ListOf;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.form.Type;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.Place;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One line of the bench log: a number that was read, and how.
 *
 * @param what is read
 * @param value as read
 * @param uncertainty half-width in the same unit, if it is known
 * @param at test point
 * @param when day or moment, ISO 8601
 * @param how method, in words
 * @param circumstances under which it was taken, as far as they were noted
 * @param place in the log
 */
public record LogEntry(
        What what,
        Quantity value,
        Optional<Quantity> uncertainty,
        Optional<String> at,
        Optional<String> when,
        Optional<String> how,
        Circumstances circumstances,
        Place place) {
    /** What can be read, by its key in the log. */
    public enum What {
        CARRIER("carrier", Unit.HERTZ, 1, 1e9),
        /** Direct voltage. */
        VOLTAGE("voltage", Unit.VOLT, -1e3, 1e3),
        /** Peak of the carrier. */
        AMPLITUDE("amplitude", Unit.VOLT, 0, 1e3),
        /** Supply current. */
        CURRENT("current", Unit.AMPERE, 0, 10),
        /** Positive peak of modulation. */
        POSITIVE_PEAK("positive_peak", Unit.FRACTION, 0, 10),
        /** Negative peak of modulation. */
        NEGATIVE_PEAK("negative_peak", Unit.FRACTION, 0, 2),
        SECOND_HARMONIC("second_harmonic", Unit.DECIBEL, -200, 20),
        THIRD_HARMONIC("third_harmonic", Unit.DECIBEL, -200, 20),
        /** Of the envelope, all harmonics together. */
        DISTORTION("distortion", Unit.FRACTION, 0, 2),
        /** Incidental frequency deviation, peak. */
        SWING("swing", Unit.HERTZ, 0, 1e6);

        private final String key;
        private final Unit unit;
        private final double low;
        private final double high;

        What(String key, Unit unit, double low, double high) {
            this.key = key;
            this.unit = unit;
            this.low = low;
            this.high = high;
        }

        public String key() {
            return key;
        }

        /** "second harmonic": for sentences. */
        public String inWords() {
            return key.replace('_', ' ');
        }

        public Unit unit() {
            return unit;
        }

        /** The kind with this key; {@code carrier}, {@code second_harmonic}. */
        public static Optional<What> of(String key) {
            return Arrays.stream(values()).filter(w -> w.key.equals(key)).findFirst();
        }

        private Form form() {
            Type amount = Quantities.one(unit, low, high);
            Type spread = unit == Unit.DECIBEL ? Quantities.one(unit, 0, 100) : Quantities.one(unit, 0, high);
            return Form.of(
                            "a reading of " + inWords(),
                            needed(key, amount, "A reading has a value with its unit."),
                            optional(
                                    "uncertainty",
                                    spread,
                                    "The uncertainty is half the width of what the reading may be, in its unit."),
                            optional("at", Text.NAME, "The place is a test point of the build."),
                            optional("when", Text.MOMENT, "A day is written 2026-03-07, a moment 2026-03-07 19:30."),
                            optional("how", Text.ANY, "How it was taken, in words."))
                    .with(Circumstances.fields());
        }
    }

    static final Form FORM = Form.of(
            "a bench log",
            Field.version(),
            needed(
                    "readings",
                    ListOf.any(new Choice(
                            "reading",
                            Arrays.stream(What.values()).map(What::form).toList())),
                    "The readings are a list, each as {carrier: 987.2 kHz, at: TP1}."));

    static List<LogEntry> of(Filled filled) {
        return filled.list("readings", Filled.class).stream()
                .map(LogEntry::entry)
                .toList();
    }

    private static LogEntry entry(Filled filled) {
        What what = What.of(filled.form().keys().get(0)).orElseThrow();
        return new LogEntry(
                what,
                filled.quantity(what.key).orElseThrow(),
                filled.quantity("uncertainty"),
                filled.text("at"),
                filled.text("when"),
                filled.text("how"),
                Circumstances.of(filled),
                filled.place());
    }
}
