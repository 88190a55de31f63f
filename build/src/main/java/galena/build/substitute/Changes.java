package galena.build.substitute;

import galena.build.spread.Drawn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What another part spoils, beyond what the build as it stands does not keep either. */
final class Changes {
    /** Of amplitudes: 3 dB. */
    private static final double OF_AMPLITUDE = Math.sqrt(2);

    /** Of the supply current: a battery's life by a third. */
    private static final double OF_CURRENT = 1.5;

    private Changes() {}

    static List<String> beyond(Drawn own, Drawn drawn) {
        List<String> failures = new ArrayList<>(drawn.failures());
        failures.removeAll(own.failures());
        within(own, drawn, Drawn.Quantity.OUTPUT, OF_AMPLITUDE, "the output changes by more than 3 dB")
                .ifPresent(failures::add);
        within(own, drawn, Drawn.Quantity.AUDIO, OF_AMPLITUDE, "it wants another audio level by more than 3 dB")
                .ifPresent(failures::add);
        Double is = drawn.values().get(Drawn.Quantity.SUPPLY),
                was = own.values().get(Drawn.Quantity.SUPPLY);
        if (is != null && was != null && is > OF_CURRENT * was) failures.add("it draws half as much again, or more");
        return failures;
    }

    private static Optional<String> within(
            Drawn own, Drawn drawn, Drawn.Quantity quantity, double most, String otherwise) {
        Double is = drawn.values().get(quantity), was = own.values().get(quantity);
        if (is == null || was == null) return Optional.empty();
        return is > was * most || is < was / most ? Optional.of(otherwise) : Optional.empty();
    }
}
