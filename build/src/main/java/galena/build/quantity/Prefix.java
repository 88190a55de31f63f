package galena.build.quantity;

import java.math.BigDecimal;
import java.util.List;

/** SI prefixes by a letter of plain ASCII: u is micro. */
final class Prefix {
    private static final String LETTERS = "fpnumkMGT";

    private Prefix() {}

    static BigDecimal multiplier(char letter) {
        return BigDecimal.ONE.scaleByPowerOfTen(exponent(letter));
    }

    static int exponent(char letter) {
        int index = LETTERS.indexOf(letter);
        if (index < 0) throw new IllegalArgumentException("not an SI prefix used here: " + letter);
        return 3 * index - 15 + (index > LETTERS.indexOf('m') ? 3 : 0);
    }

    /** The ways a prefix is typed: the micro sign exists twice in Unicode, and IEC 60062 prints kilo as K. */
    static List<String> spellings(char letter) {
        return switch (letter) {
            case 'u' -> List.of("u", "\u00B5", "\u03BC");
            case 'k' -> List.of("k", "K");
            default -> List.of(String.valueOf(letter));
        };
    }

    static String printed(char letter) {
        return letter == 'u' ? "\u00B5" : String.valueOf(letter);
    }
}
