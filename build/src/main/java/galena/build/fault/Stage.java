package galena.build.fault;

import java.util.List;

/**
 * A part of the transmitter with a job of its own.
 *
 * @param name "oscillator"
 * @param parts by name, in the order of the file; the supply among them where it belongs
 */
public record Stage(String name, List<String> parts) {
    public Stage {
        parts = List.copyOf(parts);
    }
}
