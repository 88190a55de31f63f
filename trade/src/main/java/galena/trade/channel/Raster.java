package galena.trade.channel;

import galena.trade.source.DataTable;
import galena.trade.source.Provenance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Evenly spaced channels.
 *
 * @param name "nine" or "ten"
 * @param first lowest channel (Hz)
 * @param last highest channel (Hz)
 * @param spacing (Hz)
 * @param regions codes of the regions that use it
 * @param provenance where from
 */
public record Raster(String name, long first, long last, long spacing, List<String> regions, Provenance provenance) {
    public Raster {
        regions = List.copyOf(regions);
        if (spacing <= 0 || first % spacing != 0 || last % spacing != 0 || last < first) {
            throw new IllegalArgumentException("channels are multiples of their spacing");
        }
    }

    private static final class Standard {
        static final List<Raster> RASTERS = DataTable.resource(Raster.class, "rasters.csv").rows().stream()
                .map(row -> new Raster(
                        row.text("raster"),
                        (long) row.required("first_hz"),
                        (long) row.required("last_hz"),
                        (long) row.required("spacing_hz"),
                        List.of(row.text("regions").split(";")),
                        row.provenance()))
                .toList();
    }

    /** Both rasters held: 9 kHz and 10 kHz. */
    public static List<Raster> standard() {
        return Standard.RASTERS;
    }

    /** 531 to 1602 kHz in steps of 9 kHz. */
    public static Raster nine() {
        return standard().get(0);
    }

    /** 530 to 1700 kHz in steps of 10 kHz. */
    public static Raster ten() {
        return standard().get(1);
    }

    /** The raster of a region by its code; none if it isn't known. */
    public static Optional<Raster> ofRegion(String code) {
        return standard().stream()
                .filter(raster -> raster.regions.contains(code))
                .findFirst();
    }

    /** Every channel (Hz), lowest first. */
    public List<Double> channels() {
        List<Double> channels = new ArrayList<>();
        for (long channel = first; channel <= last; channel += spacing) channels.add((double) channel);
        return channels;
    }

    /** The channel nearest to a frequency (Hz). */
    public double nearest(double frequency) {
        double step = Math.rint(frequency / spacing) * spacing;
        return Math.max((double) first, Math.min((double) last, step));
    }

    /** Whether a frequency (Hz) is a multiple of this spacing, to the hertz: a set that steps by it can stop there. */
    public boolean isStep(double frequency) {
        return Math.abs(frequency - Math.rint(frequency / spacing) * spacing) < 1;
    }

    /**
     * Channels (Hz) that sets of both steppings stop at: every 90 kHz from 540. The highest, 1620 kHz, lies above the
     * 9 kHz plan but within the reach of most sets.
     */
    public static List<Double> onBoth() {
        return ten().channels().stream().filter(nine()::isStep).toList();
    }
}
