package galena.engine.part;

import java.util.List;

/**
 * A track with a wiper. The part between {@code from} and {@code wiper} grows with the position; at either stop the end
 * resistance is left, so that no part of the track is ever a short.
 *
 * @param resistance track, ohms
 * @param position 0 to 1
 * @param endResistance ohms left at either stop
 */
public record Preset(
        String name, String from, String wiper, String to, double resistance, double position, double endResistance)
        implements Part {
    /** Share of the track left at a stop when the sheet gives none: common practice for carbon and cermet presets. */
    public static final double USUAL_END_SHARE = 0.005;

    public Preset {
        Require.named(name);
        Require.positive(name, "resistance", resistance, "Ω");
        Require.within(name, "position", position, 0, 1, "");
        Require.within(name, "end resistance", endResistance, 1e-6 * resistance, 0.2 * resistance, "Ω");
    }

    public Preset(String name, String from, String wiper, String to, double resistance, double position) {
        this(name, from, wiper, to, resistance, position, USUAL_END_SHARE * resistance);
    }

    /** Ohms between {@code from} and {@code wiper}. */
    public double lower() {
        return endResistance + position * (resistance - 2 * endResistance);
    }

    /** Ohms between {@code wiper} and {@code to}. */
    public double upper() {
        return endResistance + (1 - position) * (resistance - 2 * endResistance);
    }

    /** The same with its track and end resistance times a factor. */
    public Preset scaled(double factor) {
        return new Preset(name, from, wiper, to, resistance * factor, position, endResistance * factor);
    }

    /** The same preset, turned. */
    public Preset at(double newPosition) {
        return new Preset(name, from, wiper, to, resistance, newPosition, endResistance);
    }

    @Override
    public List<String> nets() {
        return List.of(from, wiper, to);
    }

    @Override
    public List<String> pins() {
        return List.of("from", "wiper", "to");
    }
}
