package galena.packet.chart;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What a chart shows. All values are in SI units (shares as shares, decibels as decibels).
 *
 * @param title what is shown, in a few words
 * @param x axis along the page
 * @param y axis up the page
 * @param series lines, at most {@value #MOST_SERIES}; more can't be told apart without colour
 * @param windows shaded ranges, such as what the intent allows
 * @param marks single points with a word each
 */
public record Chart(String title, Axis x, Axis y, List<Series> series, List<Window> windows, List<Mark> marks) {
    /** As many lines as there are dashes and markers. */
    public static final int MOST_SERIES = 4;

    /** How an axis is divided. */
    public enum Scale {
        LINEAR,
        LOGARITHMIC
    }

    /** Which way a window is laid. */
    public enum Along {
        X,
        Y
    }

    /**
     * @param name the quantity, as in "carrier"
     * @param unit written behind the name and meant by the numbers, as in "kHz"; empty for a plain number
     * @param unitSize how many SI units that is, 1e3 for kHz, 0.01 for %
     * @param scale how it is divided
     */
    public record Axis(String name, String unit, double unitSize, Scale scale) {
        public Axis {
            if (!(unitSize > 0) || Double.isInfinite(unitSize))
                throw new IllegalArgumentException(name + ": a unit's size is above zero, not " + unitSize);
        }

        public static Axis linear(String name, String unit, double unitSize) {
            return new Axis(name, unit, unitSize, Scale.LINEAR);
        }

        public static Axis logarithmic(String name, String unit, double unitSize) {
            return new Axis(name, unit, unitSize, Scale.LOGARITHMIC);
        }

        /** "carrier, kHz" */
        public String title() {
            return unit.isEmpty() ? name : name + ", " + unit;
        }
    }

    /**
     * @param x place along the page
     * @param y value
     * @param low lower end of the value's interval; y where there is none
     * @param high upper end
     */
    public record Point(double x, double y, double low, double high) {
        public Point {
            if (!Double.isFinite(x + y + low + high)) throw new IllegalArgumentException("a point must be finite");
            if (low > y || high < y)
                throw new IllegalArgumentException(y + " lies outside its interval " + low + " to " + high);
        }

        public static Point at(double x, double y) {
            return new Point(x, y, y, y);
        }
    }

    /**
     * @param name written at the line's end
     * @param strokes runs of points; where a value can't be had, one run ends and the next begins
     * @param marked whether markers sit on the line; an outline, such as a histogram's, has none
     */
    public record Series(String name, List<List<Point>> strokes, boolean marked) {
        public Series {
            strokes =
                    strokes.stream().filter(s -> !s.isEmpty()).map(List::copyOf).toList();
        }

        public Series(String name, List<List<Point>> strokes) {
            this(name, strokes, true);
        }

        /** A line without markers. */
        public static Series outline(String name, List<Point> points) {
            return new Series(name, List.of(points), false);
        }

        public static Series of(String name, List<Point> points) {
            return new Series(name, List.of(points));
        }

        Stream<Point> points() {
            return strokes.stream().flatMap(List::stream);
        }
    }

    /**
     * A range of x or y.
     *
     * @param along the axis whose range it is
     * @param name a word for it
     */
    public record Window(Along along, double low, double high, String name) {
        public Window {
            if (!(low <= high) || Double.isInfinite(high - low))
                throw new IllegalArgumentException(name + ": a window runs from low to high");
        }
    }

    /** A single point with a word. */
    public record Mark(double x, double y, String name) {
        public Mark {
            if (!Double.isFinite(x + y)) throw new IllegalArgumentException(name + ": a mark must be finite");
        }
    }

    public Chart {
        series = List.copyOf(series);
        windows = List.copyOf(windows);
        marks = List.copyOf(marks);
        if (series.size() > MOST_SERIES)
            throw new IllegalArgumentException("at most " + MOST_SERIES + " lines, not " + series.size());
        if (series.stream().flatMap(Series::points).findAny().isEmpty() && marks.isEmpty())
            throw new IllegalArgumentException("\"" + title + "\" has nothing to show");
        requirePositive(x, allX(series, windows, marks));
        requirePositive(y, allY(series, windows, marks));
    }

    private static void requirePositive(Axis axis, DoubleStream values) {
        if (axis.scale() == Scale.LOGARITHMIC && values.anyMatch(v -> v <= 0))
            throw new IllegalArgumentException(axis.name() + ": a logarithmic axis takes values above zero");
    }

    DoubleStream allX() {
        return allX(series, windows, marks);
    }

    DoubleStream allY() {
        return allY(series, windows, marks);
    }

    private static DoubleStream allX(List<Series> series, List<Window> windows, List<Mark> marks) {
        return DoubleStream.concat(
                series.stream().flatMap(Series::points).mapToDouble(Point::x),
                DoubleStream.concat(marks.stream().mapToDouble(Mark::x), ends(windows, Along.X)));
    }

    private static DoubleStream allY(List<Series> series, List<Window> windows, List<Mark> marks) {
        return DoubleStream.concat(
                series.stream().flatMap(Series::points).flatMapToDouble(p -> DoubleStream.of(p.low(), p.y(), p.high())),
                DoubleStream.concat(marks.stream().mapToDouble(Mark::y), ends(windows, Along.Y)));
    }

    private static DoubleStream ends(List<Window> windows, Along along) {
        return windows.stream()
                .filter(w -> w.along() == along)
                .flatMapToDouble(w -> DoubleStream.of(w.low(), w.high()));
    }
}
