package galena.trade.noise;

import galena.trade.source.DataTable;
import galena.trade.source.Provenance;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Surroundings as ITU-R P.372 tells them apart. Fam = c − d·log10(f/MHz), dB above kT0B, from 0.3 to 250 MHz. */
public enum Environment {
    CITY,
    RESIDENTIAL,
    RURAL,
    QUIET_RURAL,
    /** From the sky, heard above the critical frequency of the ionosphere only: not at medium waves. */
    GALACTIC;

    /** Validity of the table (Hz). */
    public static final double LOWEST = 0.3e6;

    public static final double HIGHEST = 250e6;

    private static final class Table {
        static final Map<Environment, Map<String, Double>> VALUES = new EnumMap<>(Environment.class);
        static final Map<Environment, Provenance> SOURCES = new EnumMap<>(Environment.class);

        static {
            for (DataTable.Row row :
                    DataTable.resource(Environment.class, "environments.csv").rows()) {
                Environment environment = valueOf(row.text("environment").toUpperCase(Locale.ROOT));
                VALUES.computeIfAbsent(environment, e -> new HashMap<>())
                        .put(row.text("quantity"), row.required("value"));
                SOURCES.put(environment, row.provenance());
            }
        }
    }

    private double value(String quantity) {
        Double value = Table.VALUES.getOrDefault(this, Map.of()).get(quantity);
        if (value == null) throw new IllegalStateException(this + " has no " + quantity);
        return value;
    }

    /** Median noise figure Fam (dB above kT0B) at a frequency (Hz). */
    public double median(double frequency) {
        if (!(frequency >= LOWEST && frequency <= HIGHEST)) {
            throw new IllegalArgumentException(
                    "the table of noise holds from 0.3 to 250 MHz, not at " + frequency + " Hz");
        }
        return value("c") - value("d") * Math.log10(frequency / 1e6);
    }

    /** dB from the median up to what is exceeded a tenth of the time; 0 where the table gives none. */
    public double upperDecile() {
        return this == GALACTIC ? 0 : value("du");
    }

    /** dB from the median down to what is exceeded nine tenths of the time; 0 where the table gives none. */
    public double lowerDecile() {
        return this == GALACTIC ? 0 : value("dl");
    }

    /** Source of the constants. */
    public Provenance provenance() {
        Provenance source = Table.SOURCES.get(this);
        if (source == null) throw new IllegalStateException(this + " has no source");
        return source;
    }
}
