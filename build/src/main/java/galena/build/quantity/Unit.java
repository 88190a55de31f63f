package galena.build.quantity;

/** What a quantity measures, how its unit is spelled, and which SI unit the value is held in. */
public enum Unit {
    OHM("a resistance", "Ω", "mkMGT", "\u03A9 \u2126 ohm ohms Ohm R", "Ω", "470R, 4.7k, 4k7 or 1M, with or without Ω"),
    FARAD("a capacitance", "F", "fpnumkM", "F", "pF", "47p, 4n7, 100n or 10µ, with or without F"),
    HENRY("an inductance", "H", "pnumkM", "H", "µH", "100µ, 4µ7 or 1m, with or without H"),
    VOLT("a voltage", "V", "numk", "V", "V", "9 V or 300 mV"),
    AMPERE("a current", "A", "fpnum", "A", "mA", "10 mA or 2 µA"),
    WATT("a power", "W", "pnumk", "W", "mW", "100 mW"),
    HERTZ("a frequency", "Hz", "mkMG", "Hz", "kHz", "999 kHz, 60 Hz or 1 MHz"),
    SECOND("a time", "s", "fpnum", "s", "s", "20 h, 90 min or 5 µs"),
    METRE("a length", "m", "numk", "m", "m", "4 m, 12 cm or 0.3 mm"),
    SIEMENS("a transconductance", "S", "num", "S A/V", "mS", "5 mS or 5 mA/V"),
    AMPERE_PER_SQUARE_VOLT("a square-law coefficient", "A/V²", "num", "A/V² A/V^2 A/V2", "mA/V²", "2 mA/V²"),
    VOLT_PER_METRE("an electric field strength", "V/m", "num", "V/m", "µV/m", "24 µV/m or 1 mV/m"),
    AMPERE_PER_METRE("a magnetic field strength", "A/m", "fpnum", "A/m", "µA/m", "60 nA/m"),
    SQUARE_METRE("an area", "m²", "", "m² m2", "m²", "0.25 m²"),
    AMPERE_SQUARE_METRE("a magnetic moment", "A·m²", "num", "A·m² Am² Am2", "mA·m²", "2 mA·m²"),
    VOLT_PER_SECOND("a slew rate", "V/s", "mkM", "V/s", "V/µs", "0.5 V/µs or 13 V/µs"),
    PER_VOLT("a slope", "/V", "m", "/V 1/V V^-1", "/V", "0.02 /V"),
    PPM_PER_KELVIN("a temperature coefficient", "ppm/K", "", "ppm/K ppm/°C ppm/C", "ppm/K", "30 ppm/K or -750 ppm/K"),
    FRACTION("a fraction", "%", "", "%", "%", "5 %"),
    NUMBER("a plain number", "", "", "", "", "a number without a unit, as 0.002"),
    RATIO("a ratio", "x", "", "x ×", "x", "10x"),
    DECIBEL("a level", "dB", "", "dB dBc", "dB", "-40 dB"),
    COULOMB("a charge", "Ah", "m", "Ah", "mAh", "2000 mAh or 2 Ah"),
    KELVIN("a temperature", "°C", "", "°C ℃ degC C", "°C", "25 °C");

    private final String noun;
    private final String symbol;
    private final String prefixes;
    private final String usual;
    private final String examples;
    private final String spellings;

    Unit(String noun, String symbol, String prefixes, String spellings, String usual, String examples) {
        this.noun = noun;
        this.symbol = symbol;
        this.prefixes = prefixes;
        this.usual = usual;
        this.examples = examples;
        this.spellings = spellings;
    }

    /** "a capacitance": for sentences. */
    public String noun() {
        return noun;
    }

    /** "capacitance": for names in schemas. */
    public String word() {
        return noun.replaceFirst("^an? ", "").replaceAll("[ -]", "_");
    }

    /** A regular expression (ECMA-262, as JSON Schema wants) for one quantity of this kind, not anchored. */
    public String pattern() {
        return Spelling.pattern(this);
    }

    /** The symbol as printed, "Ω"; empty for a plain number. */
    public String symbol() {
        return symbol;
    }

    /** Forms that are read, for sentences: "47p, 4n7, 100n or 10µ, with or without F". */
    public String examples() {
        return examples;
    }

    /** The unit that a builder who left it out most often means, with its prefix: "pF". */
    String usual() {
        return usual;
    }

    /** SI prefixes that make sense with this unit, smallest first. */
    String prefixes() {
        return prefixes;
    }

    /** Ways of writing the unit without prefix, parted by blanks. */
    String spellings() {
        return spellings;
    }

    /** Component values are written 47n and 4n7; nothing else is. */
    boolean hasLetterCodes() {
        return this == OHM || this == FARAD || this == HENRY;
    }
}
