package galena.trade.channel;

import java.util.List;
import java.util.Optional;

/**
 * One way to a channel out of the box.
 *
 * @param channel aimed at (Hz)
 * @param first part
 * @param second the other part of a mix, if there is one
 * @param mix how the two are joined
 * @param dividers chain of divisions after it, in order; empty for none. An even one stands last where there is one, for it
 *     leaves a square wave of equal halves
 * @param frequency unpulled (Hz)
 * @param error {@code frequency} less {@code channel} (Hz)
 * @param whistle tone against a carrier on the channel, unpulled (Hz)
 * @param pulled the part to pull: of a mix the one with more room
 * @param pullNeeded change of that part (Hz at its own frequency, negative for down) that lands on the channel
 * @param pullRoom how far it goes that way (Hz)
 */
public record Landing(
        double channel,
        BoxPart first,
        Optional<BoxPart> second,
        Mix mix,
        List<Integer> dividers,
        double frequency,
        double error,
        double whistle,
        BoxPart pulled,
        double pullNeeded,
        double pullRoom) {
    /** How frequencies are joined. */
    public enum Mix {
        ALONE,
        SUM,
        DIFFERENCE
    }

    public Landing {
        dividers = List.copyOf(dividers);
    }

    /** Whether the part can be pulled onto the channel. */
    public boolean isReachable() {
        return Math.abs(pullNeeded) <= pullRoom;
    }

    /** Whether the last stage gives equal halves. */
    public boolean endsEven() {
        return !dividers.isEmpty() && dividers.get(dividers.size() - 1) % 2 == 0;
    }

    /** Stages after the oscillator: dividers, and a mixer with its second oscillator as two. */
    public int stages() {
        return (second.isPresent() ? 2 : 0) + dividers.size();
    }

    /** "16.000 − 14.318", "/5", as one line. */
    public String recipe() {
        StringBuilder line = new StringBuilder(first.name());
        second.ifPresent(other -> line.append(mix == Mix.SUM ? " + " : " − ").append(other.name()));
        for (int each : dividers) line.append(" /").append(each);
        return line.toString();
    }
}
