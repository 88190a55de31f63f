package galena.build.quantity;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** Every spelling of every unit with its multiplier to SI; exact, so that 4.7k is 4700 and nothing beside it. */
final class Scales {
    static final BigDecimal ZERO_CELSIUS = new BigDecimal("273.15");
    static final BigDecimal MINUTE = BigDecimal.valueOf(60);
    static final BigDecimal HOUR = BigDecimal.valueOf(3600);
    static final BigDecimal PERCENT = new BigDecimal("0.01");
    static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);
    static final BigDecimal MILLION = BigDecimal.valueOf(1_000_000);
    static final BigDecimal PPM = new BigDecimal("0.000001");

    private static final Map<Unit, Map<String, BigDecimal>> ALL = new EnumMap<>(Unit.class);

    static {
        for (Unit unit : Unit.values()) ALL.put(unit, build(unit));
    }

    private Scales() {}

    /** Suffix behind the number to multiplier; an empty suffix where the unit has none. */
    static Map<String, BigDecimal> of(Unit unit) {
        return ALL.getOrDefault(unit, Map.of());
    }

    private static Map<String, BigDecimal> build(Unit unit) {
        Map<String, BigDecimal> scales = new LinkedHashMap<>();
        String prefixes = unit.prefixes();
        for (String spelling : unit.spellings().split(" ")) {
            scales.put(spelling, one(unit));
            for (int i = 0; i < prefixes.length(); i++) {
                BigDecimal scale = Prefix.multiplier(prefixes.charAt(i)).multiply(one(unit));
                for (String written : Prefix.spellings(prefixes.charAt(i))) {
                    scales.put(written + spelling, scale);
                    if (unit.hasLetterCodes()) scales.put(written, scale);
                }
            }
        }
        switch (unit) {
            case METRE -> scales.put("cm", PERCENT);
            case VOLT_PER_SECOND -> {
                for (String micro : Prefix.spellings('u')) scales.put("V/" + micro + "s", MILLION);
                scales.put("V/ms", THOUSAND);
            }
            case KELVIN -> scales.put("K", BigDecimal.ONE);
            case SECOND -> {
                scales.put("min", MINUTE);
                scales.put("h", HOUR);
            }
            default -> {}
        }
        return Map.copyOf(scales);
    }

    /** SI units in the unit as spelled without a prefix. */
    private static BigDecimal one(Unit unit) {
        return switch (unit) {
            case FRACTION -> PERCENT;
            case PPM_PER_KELVIN -> PPM;
            case COULOMB -> HOUR;
            default -> BigDecimal.ONE;
        };
    }
}
