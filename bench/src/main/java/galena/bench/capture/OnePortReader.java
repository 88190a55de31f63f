package galena.bench.capture;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One-port analyser text by the open specification: {@code !} begins a remark, one {@code #} line gives unit, parameter,
 * form and reference, and every other line a frequency and a pair. Defaults where the line is silent: GHz, S, MA, 50 Ω.
 */
final class OnePortReader {
    private static final int MOST_POINTS = 1_000_000;

    private OnePortReader() {}

    static boolean isOptionLine(String line) {
        String text = line.strip().toUpperCase(Locale.ROOT);
        return text.matches("#(\\s*(HZ|KHZ|MHZ|GHZ|S|Y|Z|RI|MA|DB|R\\s*[0-9.E+]+))+\\s*(!.*)?");
    }

    private static final class Options {
        private double unit = 1e9;
        private char parameter = 'S';
        private String form = "MA";
        private double reference = 50;
    }

    static Capture read(String place, String name, InputStream in) throws IOException {
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.ISO_8859_1));
        List<Double> hertz = new ArrayList<>(), re = new ArrayList<>(), im = new ArrayList<>();
        Options options = new Options();
        long skipped = 0;
        int lineNumber = 0, heading = 0;
        for (String line = Lines.next(reader, place, 1);
                line != null;
                line = Lines.next(reader, place, lineNumber + 1)) {
            lineNumber++;
            String text = line.contains("!") ? line.substring(0, line.indexOf('!')) : line;
            if (text.isBlank()) continue;
            if (text.strip().startsWith("#")) {
                if (isOptionLine(text)) options = options(text, place + ":" + lineNumber);
                heading = lineNumber;
                continue;
            }
            if (!point(text.strip().split("\\s+"), options, hertz, re, im, place + ":" + lineNumber)) skipped++;
            if (hertz.size() > MOST_POINTS)
                throw new UnreadableCapture(place, "more than " + MOST_POINTS + " points", "Sweep fewer points");
        }
        if (hertz.size() < 3)
            throw new UnreadableCapture(
                    place, "only " + hertz.size() + " points of a sweep were found", "A sweep needs at least three");
        List<Note> notes = skipped == 0
                ? List.of()
                : List.of(new Note(Note.Kind.ROWS_SKIPPED, skipped + " rows hold no point of the sweep"));
        return new Capture(
                name,
                new OnePort(hertz, re, im, options.reference),
                new Understanding(
                        "one-port sweep",
                        "reflection as " + options.form,
                        "frequency column",
                        0,
                        hertz.size(),
                        skipped,
                        heading,
                        notes));
    }

    private static Options options(String line, String place) throws UnreadableCapture {
        Options o = new Options();
        String[] words =
                line.strip().substring(1).strip().toUpperCase(Locale.ROOT).split("\\s+");
        for (int k = 0; k < words.length; k++) {
            switch (words[k]) {
                case "HZ" -> o.unit = 1;
                case "KHZ" -> o.unit = 1e3;
                case "MHZ" -> o.unit = 1e6;
                case "GHZ" -> o.unit = 1e9;
                case "S", "Y", "Z" -> o.parameter = words[k].charAt(0);
                case "RI", "MA", "DB" -> o.form = words[k];
                case "R" -> {
                    o.reference = k + 1 < words.length ? number(words[k + 1]) : Double.NaN;
                    if (!(o.reference > 0))
                        throw new UnreadableCapture(place, "the reference resistance is missing", "Write it as R 50");
                    k++;
                }
                default -> {
                    if (words[k].startsWith("R")) o.reference = number(words[k].substring(1));
                    if (!(o.reference > 0))
                        throw new UnreadableCapture(
                                place, "the option \"" + words[k] + "\" is not known", "Write for one: # Hz S RI R 50");
                }
            }
        }
        return o;
    }

    private static boolean point(
            String[] words, Options o, List<Double> hertz, List<Double> re, List<Double> im, String place)
            throws UnreadableCapture {
        if (words.length > 3) {
            throw new UnreadableCapture(
                    place,
                    "the row has " + words.length + " numbers",
                    "Save the sweep of one port alone: frequency and one pair");
        }
        if (words.length != 3) return false;
        double f = number(words[0]) * o.unit, a = number(words[1]), b = number(words[2]);
        if (!Double.isFinite(f + a + b) || f < 0) return false;
        if (!hertz.isEmpty() && f <= hertz.get(hertz.size() - 1)) return false;
        double magnitude = o.form.equals("DB") ? Math.pow(10, a / 20) : a, angle = Math.toRadians(b);
        double x = o.form.equals("RI") ? a : magnitude * Math.cos(angle),
                y = o.form.equals("RI") ? b : magnitude * Math.sin(angle);
        double[] gamma = reflection(o.parameter, x, y);
        if (!Double.isFinite(gamma[0] + gamma[1])) return false;
        hertz.add(f);
        re.add(gamma[0]);
        im.add(gamma[1]);
        return true;
    }

    /** Reflection from S, or from a normalised impedance (z − 1)/(z + 1) or admittance (1 − y)/(1 + y). */
    private static double[] reflection(char parameter, double x, double y) {
        if (parameter == 'S') return new double[] {x, y};
        double sign = parameter == 'Z' ? 1 : -1, d = (x + 1) * (x + 1) + y * y;
        return new double[] {sign * ((x - 1) * (x + 1) + y * y) / d, sign * 2 * y / d};
    }

    private static double number(String word) {
        try {
            return Double.parseDouble(word);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
