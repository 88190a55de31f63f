package galena.bench.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a table of samples is laid out, found by looking. The order matters: which block of numbers, which rows above are
 * names and units, which column is time, where the time between samples comes from, and whether the values are codes.
 *
 * @param dialect of the rows
 * @param firstLine of data, from 0
 * @param time column, or −1
 * @param stamps what the time column looks like, if there is one
 * @param timeScale seconds per unit of the time column
 * @param channels columns, from 0
 * @param names of the channels
 * @param units of the channels
 * @param scale of the channels
 * @param offset of the channels, added after scaling
 * @param heading what the words say
 * @param notes on what was guessed
 */
@SuppressWarnings("ArrayRecordComponent") // private to the package, never changed
record TextLayout(
        Dialect dialect,
        int firstLine,
        int time,
        Optional<TimeStamps> stamps,
        double timeScale,
        int[] channels,
        List<String> names,
        List<String> units,
        double[] scale,
        double[] offset,
        Heading heading,
        List<Note> notes) {
    /** Codes to a division when a file gives volts per division alone: common practice of 8-bit instruments. */
    private static final double USUAL_CODES_PER_DIVISION = 25;

    static TextLayout of(Block block, Overrides overrides) {
        Heading heading = new Heading(block);
        List<Note> notes = new ArrayList<>();
        List<String> names = row(block, namesLine(block)), units = row(block, unitsLine(block));
        int time = timeColumn(block, names, units, overrides);
        Optional<TimeStamps> stamps = time < 0 ? Optional.empty() : TimeStamps.of(block.values(time));
        if (time >= 0 && overrides.timeColumn().isEmpty() && isIndex(block, time, names, units, stamps)) {
            time = -1;
            stamps = Optional.empty();
            notes.add(new Note(Note.Kind.GUESSED, "A column counts samples; it is not taken as time"));
        }
        double timeScale = time < 0 ? 1 : timeScale(at(names, time), at(units, time), notes);
        int[] channels = channels(block, time, names, units, overrides, notes);
        List<String> channelNames = new ArrayList<>(), channelUnits = new ArrayList<>();
        double[] scale = new double[channels.length], offset = new double[channels.length];
        for (int k = 0; k < channels.length; k++) {
            String name = at(names, channels[k]);
            channelNames.add(name.isEmpty() ? "column " + (channels[k] + 1) : name.replaceAll("\\s*[(\\[].*", ""));
            Suffixed unit = unit(name, at(units, channels[k]));
            channelUnits.add(unit.unit());
            scale[k] = unit.value();
        }
        TextLayout layout = new TextLayout(
                block.dialect(),
                block.first(),
                time,
                stamps,
                timeScale,
                channels,
                channelNames,
                channelUnits,
                scale,
                offset,
                heading,
                notes);
        layout.scaleCodes(block);
        layout.applyStated(overrides);
        return layout;
    }

    private static int unitsLine(Block block) {
        for (int line = block.first() - 1; line >= 0; line--) {
            if (block.lines().get(line).isBlank()) continue;
            List<String> cells = cells(block, line);
            long filled = 0, unit = 0;
            for (int column : block.columns()) {
                String word = column < cells.size() ? cells.get(column).replaceAll("[()\\[\\]]", "") : "";
                if (word.isEmpty()) continue;
                filled++;
                if (Suffixed.unit(word).isPresent()
                        || word.toLowerCase(Locale.ROOT).matches("sequence|index|°c|deg ?c")) unit++;
            }
            return filled > 0 && unit * 2 > filled ? line : -1;
        }
        return -1;
    }

    private static int namesLine(Block block) {
        int below = unitsLine(block);
        for (int line = (below < 0 ? block.first() : below) - 1; line >= 0; line--) {
            if (block.lines().get(line).isBlank()) continue;
            List<String> cells = cells(block, line);
            int words = 0;
            for (int column : block.columns()) {
                if (column < cells.size()
                        && !cells.get(column).isEmpty()
                        && Double.isNaN(block.dialect().number(cells.get(column)))) words++;
            }
            return words * 2 > block.columns().size() ? line : -1;
        }
        return -1;
    }

    private static List<String> cells(Block block, int line) {
        return block.dialect().cells(Heading.withoutMark(block.lines().get(line)));
    }

    private static List<String> row(Block block, int line) {
        return line < 0 ? List.of() : cells(block, line);
    }

    private static String at(List<String> cells, int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    /** The column that is time: stated, or named and rising, or rising steadily, the first one first. */
    private static int timeColumn(Block block, List<String> names, List<String> units, Overrides overrides) {
        if (overrides.timeColumn().isPresent()) return overrides.timeColumn().get() - 1;
        int best = -1;
        double most = 0;
        for (int column : block.columns()) {
            if (block.columns().size() == 1) break;
            Optional<TimeStamps> stamps = TimeStamps.of(block.values(column));
            if (stamps.isEmpty()) continue;
            double score = stamps.get().steady()
                    ? 2
                    : stamps.get().paired() || stamps.get().rounded() ? 1 : 0.5;
            String name = at(names, column).toLowerCase(Locale.ROOT);
            if (unit(at(names, column), at(units, column)).unit().equals("s")) score += 4;
            if (name.contains("time") || name.contains("second") || name.equals("t") || name.equals("x")) score += 3;
            if (score > most + 0.01) {
                most = score;
                best = column;
            }
        }
        return best;
    }

    /** A count of samples: whole steps of one without a unit of time. */
    private static boolean isIndex(
            Block block, int time, List<String> names, List<String> units, Optional<TimeStamps> stamps) {
        if (stamps.isEmpty() || stamps.get().step() != 1) return false;
        double first = block.values(time)[0];
        return first == Math.rint(first)
                && !unit(at(names, time), at(units, time)).unit().equals("s");
    }

    private static double timeScale(String name, String unit, List<Note> notes) {
        Suffixed found = unit(name, unit);
        if (found.unit().equals("s")) return found.value();
        if (!unit.isEmpty() || Heading.bracketUnit(name).isPresent()) {
            notes.add(new Note(
                    Note.Kind.GUESSED,
                    "The unit of time \"" + (unit.isEmpty() ? name : unit) + "\" is not known; seconds are assumed"));
        }
        return 1;
    }

    /** Unit of a column from its unit cell or the brackets in its name; factor 1 and unit "" when neither says. */
    private static Suffixed unit(String name, String unit) {
        Optional<Suffixed> own = Suffixed.unit(unit.replaceAll("[()\\[\\]]", ""));
        if (own.isPresent()) return own.get();
        return Heading.bracketUnit(name).flatMap(Suffixed::unit).orElse(new Suffixed(1, ""));
    }

    private static int[] channels(
            Block block, int time, List<String> names, List<String> units, Overrides overrides, List<Note> notes) {
        if (!overrides.columns().isEmpty()) {
            return overrides.columns().stream().mapToInt(c -> c - 1).toArray();
        }
        List<Integer> kept = new ArrayList<>();
        double[] clock = time < 0 ? new double[0] : block.values(time);
        for (int column : block.columns()) {
            double[] values = block.values(column);
            boolean again = column != time && time >= 0 && java.util.Arrays.equals(values, clock);
            if (column == time || again || (time < 0 && block.columns().size() > 1 && countsRows(values))) continue;
            kept.add(column);
        }
        List<Integer> bare = kept.stream()
                .filter(c -> unit(at(names, c), at(units, c)).unit().isEmpty())
                .toList();
        dropCodesBesideVolts(block, kept, bare, notes);
        return kept.stream().mapToInt(c -> c).toArray();
    }

    private static boolean countsRows(double[] values) {
        for (int k = 1; k < values.length; k++) if (values[k] - values[k - 1] != 1) return false;
        return values.length > 3;
    }

    /** Two columns in exact proportion, one of whole numbers: the same channel as codes and as volts. */
    private static void dropCodesBesideVolts(Block block, List<Integer> kept, List<Integer> bare, List<Note> notes) {
        for (int a = 0; a < kept.size(); a++) {
            for (int b = 0; b < kept.size(); b++) {
                if (a == b
                        || !bare.contains(kept.get(a))
                        || !whole(block.values(kept.get(a)))
                        || whole(block.values(kept.get(b)))) continue;
                if (proportional(block.values(kept.get(a)), block.values(kept.get(b)))) {
                    notes.add(new Note(
                            Note.Kind.GUESSED,
                            "Column " + (kept.get(a) + 1) + " holds the codes of column " + (kept.get(b) + 1)
                                    + " and is left out"));
                    kept.remove(a);
                    return;
                }
            }
        }
    }

    private static boolean whole(double[] values) {
        for (double v : values) if (v != Math.rint(v)) return false;
        return true;
    }

    private static boolean proportional(double[] x, double[] y) {
        double sx = 0, sy = 0, xx = 0, yy = 0, xy = 0;
        int n = Math.min(x.length, y.length);
        for (int k = 0; k < n; k++) {
            sx += x[k];
            sy += y[k];
            xx += x[k] * x[k];
            yy += y[k] * y[k];
            xy += x[k] * y[k];
        }
        double vx = xx - sx * sx / n, vy = yy - sy * sy / n, cross = xy - sx * sy / n;
        return vx > 0 && vy > 0 && cross * cross > 0.9999 * vx * vy;
    }

    private void scaleCodes(Block block) {
        OptionalDouble perCode = heading.voltsPerCode();
        for (int k = 0; k < channels.length; k++) {
            if (!units.get(k).isEmpty() || !whole(block.values(channels[k]))) continue;
            double factor = perCode.orElse(heading.voltsPerDivision().orElse(0) / USUAL_CODES_PER_DIVISION);
            if (factor == 0) {
                units.set(k, "code");
                continue;
            }
            if (perCode.isEmpty()) {
                notes.add(new Note(
                        Note.Kind.GUESSED,
                        "Whole numbers are taken as codes of 25 to the division; state the scale if that is wrong"));
            }
            scale[k] = factor;
            offset[k] = -heading.verticalOffset().orElse(0);
            units.set(k, "V");
        }
    }

    private void applyStated(Overrides overrides) {
        for (int k = 0; k < channels.length; k++) {
            if (overrides.scale().isPresent()) {
                double factor = overrides.scale().getAsDouble();
                offset[k] = units.get(k).equals("V") ? offset[k] * factor : 0;
                scale[k] = units.get(k).equals("code") || units.get(k).isEmpty() ? factor : scale[k] * factor;
                if (units.get(k).equals("code")) units.set(k, "V");
            }
            if (units.get(k).isEmpty()) units.set(k, "V");
        }
        heading.probe().ifPresent(ratio -> {
            if (ratio != 1 && overrides.scale().isEmpty()) {
                notes.add(new Note(
                        Note.Kind.PROBE,
                        String.format(
                                Locale.ROOT,
                                "The file mentions a probe of %.4g:1; values are left as written. State the ratio if it is not in them",
                                ratio)));
            }
        });
    }
}
