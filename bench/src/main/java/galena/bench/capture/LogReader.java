package galena.bench.capture;

import static java.util.Objects.requireNonNull;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Frequency logs: rows that begin with a clock time, with or without a date, or with seconds beside a column that is named
 * for frequency. A clock that falls back by half a day has passed midnight.
 */
final class LogReader {
    private static final Pattern CLOCK = Pattern.compile(
            "(\\d{4}-\\d{2}-\\d{2})?.{0,12}?(?<!\\d)(\\d{1,2}):(\\d{2})(?::(\\d{2})([.,]\\d+)?)?\\s*(Z|[AaPp][Mm])?");
    private static final int MOST_READINGS = 500_000;
    private static final double DAY = 86400;

    private LogReader() {}

    static boolean looksLikeLog(List<String> lines, Overrides overrides) {
        if (overrides.kind().isPresent()) return overrides.kind().get() == Overrides.Kind.LOG;
        int stamped = 0, rows = 0;
        for (String line : lines) {
            if (line.isBlank() || line.stripLeading().startsWith("#")) continue;
            rows++;
            Matcher m = CLOCK.matcher(line);
            if (m.find() && m.start() < 4 && line.length() > m.end() + 1) stamped++;
        }
        return (stamped >= 3 && stamped > rows / 2) || frequencyColumn(lines).isPresent();
    }

    /** The line of names, when it names time and frequency and no level. */
    private static Optional<String> frequencyColumn(List<String> lines) {
        for (String line : lines.subList(0, Math.min(12, lines.size()))) {
            String text = line.toLowerCase(Locale.ROOT);
            if (text.matches(".*\\b(time|seconds?|minutes?|t)\\b.*")
                    && text.matches(".*\\b(freq\\w*|hz|khz|mhz)\\b.*")
                    && !text.matches(".*(sampl|\\brate\\b|\\bdb|=|\\d{3}).*")) return Optional.of(line);
        }
        return Optional.empty();
    }

    private record Layout(Dialect dialect, List<String> names) {}

    static Capture read(String place, String name, InputStream in, List<String> head, Overrides overrides)
            throws IOException {
        Layout layout = layout(head, overrides);
        Map<Integer, List<Double>> columns = new LinkedHashMap<>();
        List<Double> seconds = new ArrayList<>();
        long skipped = 0, line = 0;
        String firstSkipped = "";
        Clock clock = new Clock();
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        for (String text = Lines.next(reader, place, 1); text != null; text = Lines.next(reader, place, line + 1)) {
            line++;
            if (text.isBlank()) continue;
            Optional<Row> row = row(text, layout, clock);
            if (row.isEmpty() || !accept(row.get(), seconds, columns)) {
                if (!seconds.isEmpty() && skipped++ == 0) firstSkipped = "line " + line;
            }
            if (seconds.size() > MOST_READINGS)
                throw new UnreadableCapture(place, "more than " + MOST_READINGS + " readings", "Log less often");
        }
        return capture(place, name, layout, seconds, columns, skipped, firstSkipped);
    }

    private static Layout layout(List<String> head, Overrides overrides) {
        List<String> named = head.stream()
                .filter(l -> l.matches(".*[A-Za-z]{2,}.*") && !CLOCK.matcher(l).find())
                .toList();
        List<String> rows =
                head.stream().filter(l -> !l.isBlank() && !named.contains(l)).toList();
        Dialect best = new Dialect(',', '.', (char) 0);
        double most = -1;
        for (char separator :
                overrides.separator().map(c -> new char[] {c}).orElse(new char[] {'\t', ';', ',', '|', ' '})) {
            for (char decimal : overrides.decimal().map(c -> new char[] {c}).orElse(new char[] {'.', ','})) {
                if (separator == decimal) continue;
                Dialect dialect = new Dialect(separator, decimal, (char) 0);
                double score = 0;
                for (String row : rows) {
                    int numbers = 0, texts = 0;
                    for (String cell : dialect.cells(row)) {
                        if (!Double.isNaN(dialect.number(cell))) numbers++;
                        else if (!cell.isEmpty() && !CLOCK.matcher(cell).find() && !cell.matches("[\\d./-]{6,10}"))
                            texts++;
                    }
                    score += texts > 0
                            ? 0.1 * Math.min(1, numbers)
                            : numbers > 0 ? 1 + 0.01 * (10 - Math.min(9, numbers)) : 0;
                }
                if (separator == ' ') score *= 0.99;
                if (score > most) {
                    most = score;
                    best = dialect;
                }
            }
        }
        List<String> names = named.isEmpty() ? List.of() : best.cells(Heading.withoutMark(named.get(named.size() - 1)));
        return new Layout(best, names);
    }

    private record Row(double seconds, Map<Integer, Double> values) {}

    private static Optional<Row> row(String text, Layout layout, Clock clock) {
        List<String> cells = layout.dialect.cells(text);
        Matcher m = CLOCK.matcher(stamp(cells));
        boolean stamped = m.find();
        Map<Integer, Double> values = new LinkedHashMap<>();
        for (int c = 0; c < cells.size(); c++) {
            boolean stamp = stamped
                    && (CLOCK.matcher(cells.get(c)).find()
                            || cells.get(c).matches("\\d{1,4}[-./]\\d{1,2}[-./]\\d{1,4}"));
            double x = stamp ? Double.NaN : layout.dialect.number(cells.get(c));
            if (Double.isFinite(x)) values.put(c, x);
        }
        if (stamped) {
            OptionalDouble seconds = clock.seconds(m);
            return seconds.isEmpty() || values.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Row(seconds.getAsDouble(), values));
        }
        if (values.size() < 2) return Optional.empty();
        int first = values.keySet().iterator().next();
        double t = values.remove(first) * timeUnit(first < layout.names.size() ? layout.names.get(first) : "");
        return Optional.of(new Row(t, values));
    }

    /** The cell with the clock, and the date in the cell before it; a row that begins otherwise has none. */
    private static String stamp(List<String> cells) {
        for (int c = 0; c < Math.min(2, cells.size()); c++) {
            if (CLOCK.matcher(cells.get(c)).find()) return c == 0 ? cells.get(0) : cells.get(0) + " " + cells.get(1);
        }
        return "";
    }

    private static double timeUnit(String name) {
        String text = name.toLowerCase(Locale.ROOT);
        Optional<Double> bracket = Heading.bracketUnit(name)
                .flatMap(Suffixed::unit)
                .filter(u -> u.unit().equals("s"))
                .map(Suffixed::value);
        if (bracket.isPresent()) return bracket.get();
        if (text.matches(".*\\b(min|minutes?)\\b.*")) return 60;
        return text.matches(".*\\b(h|hours?)\\b.*") ? 3600 : 1;
    }

    /** Adds a row if time goes on; a column that misses a reading repeats the one before. */
    private static boolean accept(Row row, List<Double> seconds, Map<Integer, List<Double>> columns) {
        if (!seconds.isEmpty() && row.seconds < seconds.get(seconds.size() - 1)) return false;
        if (seconds.isEmpty()) row.values.keySet().forEach(c -> columns.put(c, new ArrayList<>()));
        if (!row.values.containsKey(columns.keySet().iterator().next())) return false;
        seconds.add(row.seconds);
        columns.forEach((c, list) -> {
            Double value = row.values.get(c);
            list.add(value != null ? value : list.isEmpty() ? 0.0 : list.get(list.size() - 1));
        });
        return true;
    }

    private static Capture capture(
            String place,
            String name,
            Layout layout,
            List<Double> seconds,
            Map<Integer, List<Double>> columns,
            long skipped,
            String firstSkipped)
            throws UnreadableCapture {
        if (seconds.size() < 3)
            throw new UnreadableCapture(
                    place,
                    "only " + seconds.size() + " readings with a time were found",
                    "A log needs a clock time or seconds, and a frequency, in each row");
        double start = seconds.get(0);
        int frequency = frequencyOf(layout, columns);
        if (frequency < 0)
            throw new UnreadableCapture(
                    place,
                    "no column looks like a frequency",
                    "Name the column in the first row, with its unit: frequency (kHz)");
        String title = frequency < layout.names.size() ? layout.names.get(frequency) : "";
        double scale = frequencyUnit(title, requireNonNull(columns.get(frequency)));
        Map<String, List<Double>> others = new LinkedHashMap<>();
        columns.forEach((c, list) -> {
            String other = c < layout.names.size() && !layout.names.get(c).isEmpty()
                    ? layout.names.get(c)
                    : "column " + (c + 1);
            if (c != frequency) others.put(other, list);
        });
        List<Note> notes = new ArrayList<>();
        if (skipped > 0)
            notes.add(
                    new Note(Note.Kind.ROWS_SKIPPED, skipped + " rows hold no reading, the first is " + firstSkipped));
        if (Heading.bracketUnit(title).isEmpty())
            notes.add(new Note(
                    Note.Kind.GUESSED,
                    "Frequencies are taken as " + (scale == 1 ? "Hz" : scale == 1e3 ? "kHz" : "MHz")));
        FrequencyLog log = new FrequencyLog(
                seconds.stream().map(t -> t - start).toList(),
                requireNonNull(columns.get(frequency)).stream()
                        .map(f -> f * scale)
                        .toList(),
                others);
        return new Capture(
                name,
                log,
                new Understanding(
                        "frequency log", layout.dialect.words(), "time stamps", 0, seconds.size(), skipped, 0, notes));
    }

    /** The column named for frequency; else the one whose values look most like a carrier. */
    private static int frequencyOf(Layout layout, Map<Integer, List<Double>> columns) {
        for (int c : columns.keySet()) {
            if (c < layout.names.size()
                    && layout.names.get(c).toLowerCase(Locale.ROOT).matches(".*(freq|hz).*")) return c;
        }
        for (int c : columns.keySet()) {
            double f = median(requireNonNull(columns.get(c)));
            if ((f > 1e5 && f < 3e7) || (columns.size() == 1 && f > 0.1)) return c;
        }
        return -1;
    }

    private static double frequencyUnit(String title, List<Double> values) {
        Optional<Suffixed> unit = Heading.bracketUnit(title)
                .flatMap(Suffixed::unit)
                .filter(u -> u.unit().equals("Hz"));
        if (unit.isPresent()) return unit.get().value();
        String text = title.toLowerCase(Locale.ROOT);
        if (text.contains("mhz")) return 1e6;
        if (text.contains("khz")) return 1e3;
        double f = median(values);
        return text.contains("hz") || f > 1e5 ? 1 : f > 100 ? 1e3 : 1e6;
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(d -> d).toArray();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** Turns clock times into seconds that only go on. */
    private static final class Clock {
        private double last = Double.NaN;
        private double days;

        OptionalDouble seconds(Matcher m) {
            int hour = Integer.parseInt(m.group(2)), minute = Integer.parseInt(m.group(3));
            double second = m.group(4) == null ? 0 : Integer.parseInt(m.group(4));
            if (m.group(5) != null) second += Double.parseDouble(m.group(5).replace(',', '.'));
            String half = m.group(6) == null ? "" : m.group(6).toLowerCase(Locale.ROOT);
            if (half.equals("pm") && hour < 12) hour += 12;
            if (half.equals("am") && hour == 12) hour = 0;
            if (hour > 24 || minute > 59 || second >= 61) return OptionalDouble.empty();
            double ofDay = hour * 3600.0 + minute * 60.0 + second;
            if (m.group(1) != null) {
                try {
                    return OptionalDouble.of(LocalDate.parse(m.group(1)).toEpochDay() * DAY + ofDay);
                } catch (DateTimeException notADate) {
                    return OptionalDouble.empty();
                }
            }
            if (ofDay < last - DAY / 2) days += DAY;
            last = ofDay;
            return OptionalDouble.of(days + ofDay);
        }
    }
}
