package galena.engine.part;

import java.util.List;

/**
 * Two channels in one: the lower from the source to an inner net under gate 1, the upper from there to the drain under
 * gate 2. Each follows {@link Mosfet.Model}.
 */
public record DualGateMosfet(
        String name,
        Polarity polarity,
        String drain,
        String gate2,
        String gate1,
        String source,
        Mosfet.Model lower,
        Mosfet.Model upper)
        implements Part {
    public DualGateMosfet {
        Require.named(name);
    }

    @Override
    public List<String> nets() {
        return List.of(drain, gate2, gate1, source);
    }

    @Override
    public List<String> pins() {
        return List.of("drain", "gate2", "gate1", "source");
    }
}
