package galena.build.quantity;

import java.util.Optional;

/** A text that is not the quantity it should be. The sentences are for the builder; the place in the file is added above. */
public final class BadQuantity extends Exception {
    private final String found;
    private final String rule;
    private final Optional<String> nearest;

    /**
     * @param found what was read and what is wrong with it: {@code "5..60" has no unit}
     * @param rule what is allowed there, a whole sentence
     * @param nearest valid spellings of what was probably meant, if one can be guessed
     */
    BadQuantity(String found, String rule, Optional<String> nearest) {
        super(found + ". " + rule + nearest.map(n -> " Nearest: " + n).orElse(""));
        this.found = found;
        this.rule = rule;
        this.nearest = nearest;
    }

    public String found() {
        return found;
    }

    public String rule() {
        return rule;
    }

    public Optional<String> nearest() {
        return nearest;
    }
}
