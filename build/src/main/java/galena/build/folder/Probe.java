package galena.build.folder;

import java.util.List;
import java.util.Optional;

/**
 * What a probe or meter puts across the nets it touches. The named ones are common practice: a passive probe set to 1x or
 * 10x on a 1 MΩ input, and a digital multimeter on volts with its leads.
 *
 * @param name as written, or "own" if given by its values
 * @param resistance ohms
 * @param capacitance farads
 */
public record Probe(String name, double resistance, double capacitance) {
    private static final List<Probe> NAMED =
            List.of(new Probe("1x", 1e6, 100e-12), new Probe("10x", 10e6, 12e-12), new Probe("meter", 10e6, 100e-12));

    /** Probes that can be named. */
    public static List<String> words() {
        return NAMED.stream().map(Probe::name).toList();
    }

    /** The probe that words noted with a reading begin with: "10x", "10x, ground spring". */
    public static Optional<Probe> known(String words) {
        return NAMED.stream()
                .filter(probe -> words.equals(probe.name)
                        || words.startsWith(probe.name + " ")
                        || words.startsWith(probe.name + ","))
                .findFirst();
    }

    static Probe named(String name) {
        return NAMED.stream()
                .filter(probe -> probe.name.equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no probe is called " + name));
    }
}
