package galena.trade.wire;

import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Named wire sizes: American gauge (ASTM B258, by its formula), metric (IEC 60317 list), British standard gauge. */
public final class WireTable {
    /** Which list a size belongs to. */
    public enum Numbering {
        /** American wire gauge. */
        AWG,
        /** Nominal conductor diameter in millimetres. */
        METRIC,
        /** British standard wire gauge. */
        SWG
    }

    /**
     * One size.
     *
     * @param system list it belongs to
     * @param name as printed: "24", "0.5"
     * @param diameter of the bare conductor (m)
     * @param source the list's own source
     * @param basis what stands behind the diameter
     */
    public record Gauge(Numbering system, String name, double diameter, String source, Basis basis) {
        /** Copper of this size, with the diameter that the builder measured over its enamel (m). */
        public Wire.Solid copper(double outerDiameter) {
            return Wire.Solid.copper(diameter, outerDiameter);
        }
    }

    private static final List<Gauge> TABLE = DataTable.resource(WireTable.class, "wire-gauges.csv").rows().stream()
            .map(row -> new Gauge(
                    Numbering.valueOf(row.text("system").toUpperCase(Locale.ROOT)),
                    row.text("name"),
                    row.required("diameter_m"),
                    row.text("source"),
                    Basis.named(row.text("basis"))))
            .toList();

    private WireTable() {}

    /** Every size held, thickest first within each system. */
    public static List<Gauge> sizes() {
        return TABLE;
    }

    /** The size of that name, if the list has it. */
    public static Optional<Gauge> find(Numbering system, String name) {
        return TABLE.stream()
                .filter(g -> g.system() == system && g.name().equals(name.strip()))
                .findFirst();
    }

    /** The size whose diameter is nearest in proportion: for a strange reel and a micrometer (m). */
    public static Gauge nearest(Numbering system, double diameter) {
        OutOfRange.requirePositive("conductor diameter (m)", diameter);
        return TABLE.stream()
                .filter(g -> g.system() == system)
                .min(Comparator.comparingDouble(g -> Math.abs(Math.log(g.diameter() / diameter))))
                .orElseThrow();
    }
}
