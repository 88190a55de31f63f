package galena.bench.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the words around the data say: keys with their values, wherever a file keeps them: one pair to a line, pairs in the
 * columns left of the data, a row of names over a row of values, or names of columns that hold a single value.
 */
final class Heading {
    /**
     * A key and its value.
     *
     * @param key letters and digits in lower case
     * @param value as written, a unit from the next cell joined
     */
    record Entry(String key, String value, int line) {}

    private final List<Entry> entries = new ArrayList<>();
    private final char decimal;

    /** Gathers entries from the lines above a block and from the cells left of it. */
    Heading(Block block) {
        decimal = block.dialect().decimal();
        int leftmost = block.columns().get(0);
        for (int k = 0; k < block.first(); k++) {
            List<String> cells = uncommented(block, k);
            pair(cells, k);
            if (k + 1 < block.first()) zip(cells, uncommented(block, k + 1), k + 1);
        }
        if (leftmost > 0) {
            for (int k = block.first(); k <= Math.min(block.last(), block.first() + 40); k++) {
                List<String> cells = block.dialect().cells(block.lines().get(k));
                pair(cells.subList(0, Math.min(leftmost, cells.size())), k);
            }
        }
    }

    private Heading(char decimal) {
        this.decimal = decimal;
    }

    /** Entries of lines that all stand above the data. */
    static Heading of(List<String> lines, Dialect dialect) {
        Heading heading = new Heading(dialect.decimal());
        for (int k = 0; k < lines.size(); k++) heading.pair(cells(dialect, lines.get(k)), k);
        return heading;
    }

    private static List<String> uncommented(Block block, int line) {
        return cells(block.dialect(), block.lines().get(line));
    }

    /** Cells of a heading line: parted as the data are, or, where that leaves it whole, by the mark that parts it. */
    private static List<String> cells(Dialect dialect, String line) {
        String text = withoutMark(line);
        List<String> cells = dialect.cells(text);
        for (char other : new char[] {'\t', ';', ',', '|'}) {
            boolean parted = cells.stream().filter(c -> !c.isEmpty()).count() > 1 && dialect.separator() != ' ';
            if (parted) break;
            List<String> finer = new Dialect(other, '.', (char) 0).cells(text);
            if (finer.size() > 1) return finer;
        }
        return cells;
    }

    /** A line without the marks that make it a remark. */
    static String withoutMark(String line) {
        return line.replaceFirst("^\\s*(#|;|%|//)+\\s*", "");
    }

    private void pair(List<String> cells, int line) {
        List<String> filled = cells.stream().filter(c -> !c.isEmpty()).toList();
        for (int k = 0; k < filled.size(); k++) {
            String cell = filled.get(k);
            int mark = cell.indexOf('=') > 0 ? cell.indexOf('=') : cell.indexOf(':');
            if (mark > 0
                    && mark < cell.length() - 1
                    && !key(cell.substring(0, mark)).isEmpty()) {
                entries.add(new Entry(
                        key(cell.substring(0, mark)), cell.substring(mark + 1).trim(), line));
            }
        }
        if (filled.size() < 2 || filled.size() > 4) return;
        String name = filled.get(0), value = filled.get(1);
        boolean unit = filled.size() > 2
                && Suffixed.unit(filled.get(2)).isPresent()
                && value(value).isPresent();
        entries.add(new Entry(key(name), unit ? value + " " + filled.get(2) : value, line));
        bracketUnit(name)
                .ifPresent(u -> entries.add(new Entry(key(name.replaceAll("[(\\[].*", "")), value + " " + u, line)));
    }

    /** A row of names over a row of values, of which at least one is a number. */
    private void zip(List<String> names, List<String> values, int line) {
        if (names.size() < 3 || values.size() < 3) return;
        for (int k = 0; k < Math.min(names.size(), values.size()); k++) {
            if (!names.get(k).isEmpty()
                    && value(names.get(k)).isEmpty()
                    && value(values.get(k)).isPresent()) {
                entries.add(new Entry(key(names.get(k)), values.get(k), line));
            }
        }
    }

    /** The unit in brackets at the end of a name: {@code Time [ms]}. */
    static Optional<String> bracketUnit(String name) {
        int open = Math.max(name.lastIndexOf('('), name.lastIndexOf('['));
        int close = Math.max(name.lastIndexOf(')'), name.lastIndexOf(']'));
        if (open < 0 || close <= open) return Optional.empty();
        String word = name.substring(open + 1, close);
        return Suffixed.unit(word).isPresent() ? Optional.of(word) : Optional.empty();
    }

    static String key(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    private Optional<Suffixed> value(String text) {
        String point = decimal == ',' && text.indexOf('.') < 0 ? text.replace(',', '.') : text;
        return Suffixed.read(point);
    }

    /**
     * Time between samples (s) as the words have it, from an interval or from a rate.
     *
     * @param seconds found
     * @param line from 0
     */
    record StatedInterval(double seconds, int line) {}

    Optional<StatedInterval> interval() {
        for (Entry e : entries) {
            Optional<Suffixed> v = value(e.value);
            if (v.isEmpty() || !(v.get().value() > 0)) continue;
            String unit = v.get().unit(), key = e.key;
            boolean plain = unit.isEmpty();
            if ((plain || unit.equals("s")) && namesInterval(key) && v.get().value() < 1e4) {
                return Optional.of(new StatedInterval(v.get().value(), e.line));
            }
            if ((plain || unit.equals("Hz") || unit.equals("Sa/s"))
                    && namesRate(key)
                    && v.get().value() > 1e-3) {
                return Optional.of(new StatedInterval(1 / v.get().value(), e.line));
            }
        }
        return Optional.empty();
    }

    private static boolean namesInterval(String key) {
        if (key.contains("div") || key.contains("rate") || key.contains("delay")) return false;
        return key.contains("interval")
                || key.contains("increment")
                || key.contains("sampleperiod")
                || key.contains("samplingperiod")
                || key.contains("sampletime")
                || key.contains("timestep")
                || key.contains("timeperpoint")
                || key.contains("timepersample")
                || key.contains("secondspersample")
                || key.equals("period")
                || key.equals("dt")
                || key.equals("deltat");
    }

    private static boolean namesRate(String key) {
        return key.contains("samplerate")
                || key.contains("samplingrate")
                || key.contains("samplefreq")
                || key.contains("samplingfreq")
                || key.contains("samplespersecond")
                || key.equals("rate")
                || key.equals("fs")
                || key.equals("ratehz")
                || key.equals("sps");
    }

    /** Time of the first sample (s). */
    OptionalDouble start() {
        return number("start", "s").isPresent() ? number("start", "s") : number("firstpoint", "s");
    }

    /** Number of rows that the words promise. */
    OptionalDouble promisedRows() {
        for (String name : new String[] {
            "recordlength", "memorylength", "numberofpoints", "numberofsamples", "samplecount", "points"
        }) {
            OptionalDouble n = number(name, "points");
            if (n.isPresent()) return n;
        }
        return OptionalDouble.empty();
    }

    /** Points of each segment, if the words give one count. */
    OptionalDouble segmentLength() {
        return number("segment", "points");
    }

    /** Volts per code, from a multiplier or from volts and codes per division. */
    OptionalDouble voltsPerCode() {
        for (String name : new String[] {"voltspercode", "ymultiplier", "verticalmultiplier", "codestep"}) {
            OptionalDouble n = number(name, "V");
            if (n.isPresent()) return n;
        }
        OptionalDouble perDivision = voltsPerDivision(), codes = number("codesperdiv", "");
        if (perDivision.isPresent() && codes.isPresent() && codes.getAsDouble() > 0) {
            return OptionalDouble.of(perDivision.getAsDouble() / codes.getAsDouble());
        }
        return OptionalDouble.empty();
    }

    OptionalDouble voltsPerDivision() {
        for (Entry e : entries) {
            Optional<Suffixed> v = value(e.value);
            if (v.isEmpty() || !(v.get().value() > 0)) continue;
            boolean named = e.key.contains("voltsdiv")
                    || e.key.contains("voltsperdiv")
                    || e.key.contains("verticalscale")
                    || e.key.equals("vdiv");
            if (v.get().unit().equals("V/div")
                    || (named && (v.get().unit().isEmpty() || v.get().unit().equals("V")))) {
                return OptionalDouble.of(v.get().value());
            }
        }
        return OptionalDouble.empty();
    }

    /** Offset to add to scaled codes (V). */
    OptionalDouble verticalOffset() {
        return number("verticaloffset", "V");
    }

    /** Ratio of the probe. */
    OptionalDouble probe() {
        for (Entry e : entries) {
            if (!e.key.contains("probe") && !e.key.contains("attenuation")) continue;
            Optional<Suffixed> v = value(e.value);
            if (v.isPresent()
                    && v.get().value() > 0
                    && (v.get().unit().isEmpty() || v.get().unit().equals("x"))) {
                return OptionalDouble.of(v.get().value());
            }
        }
        return OptionalDouble.empty();
    }

    private OptionalDouble number(String name, String unit) {
        for (Entry e : entries) {
            Optional<Suffixed> v = value(e.value);
            if (v.isPresent()
                    && e.key.contains(name)
                    && (v.get().unit().isEmpty() || v.get().unit().equals(unit))) {
                return OptionalDouble.of(v.get().value());
            }
        }
        return OptionalDouble.empty();
    }
}
