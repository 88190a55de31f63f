package galena.build.winding;

import galena.trade.coil.BobbinFormer;
import galena.trade.coil.Former;
import galena.trade.coil.FrameFormer;
import galena.trade.coil.RectangularFrame;
import galena.trade.coil.SpiralFormer;
import galena.trade.coil.TubeFormer;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodFormer;
import galena.trade.ferrite.Toroid;
import galena.trade.ferrite.ToroidFormer;
import galena.trade.wire.Wire;
import java.util.OptionalDouble;

/**
 * What there is to wind on, as a builder measures it; lengths in metres. Sizes are taken to be measured to half a millimetre or 1 %,
 * whichever is less, and turns laid by hand to 3 % of their pitch: common practice.
 */
public sealed interface Shape {
    /** Share that a hand-laid pitch is off by. */
    double PITCH_KNOWN_TO = 0.03;

    /** What it is, in a few words. */
    String words();

    /** The former with a wire; turns lie close unless a pitch is given. */
    Former former(Wire wire, OptionalDouble pitch);

    /** How well a size is measured (m). */
    static double ruler(double size) {
        return Math.min(0.5e-3, 0.01 * size);
    }

    private static double pitch(Wire wire, OptionalDouble pitch) {
        return pitch.orElse(wire.outerDiameter());
    }

    /** A tube or round frame for one layer, with the length that may be wound. */
    record Tube(double diameter, double room) implements Shape {
        @Override
        public String words() {
            return "one layer on a tube";
        }

        @Override
        public Former former(Wire wire, OptionalDouble pitch) {
            return new TubeFormer(diameter, ruler(diameter), room, Shape.pitch(wire, pitch), PITCH_KNOWN_TO, wire);
        }
    }

    /** A bobbin between cheeks, wound in layers. */
    record Bobbin(double hub, double cheek, double width) implements Shape {
        /** Layers bed in less well than turns lie. */
        private static final double LAYERS_KNOWN_TO = 0.05;

        @Override
        public String words() {
            return "layers on a bobbin";
        }

        @Override
        public Former former(Wire wire, OptionalDouble pitch) {
            double laid = Shape.pitch(wire, pitch);
            return new BobbinFormer(hub, ruler(hub), width, cheek, laid, wire.outerDiameter(), LAYERS_KNOWN_TO, wire);
        }
    }

    /** A frame with corners; turns side by side, or each inside the one before when flat. */
    record Frame(double width, double height, double room, boolean flat) implements Shape {
        @Override
        public String words() {
            return flat ? "flat on a frame" : "side by side on a frame";
        }

        @Override
        public Former former(Wire wire, OptionalDouble pitch) {
            return new FrameFormer(
                    width,
                    height,
                    ruler(Math.min(width, height)),
                    room,
                    Shape.pitch(wire, pitch),
                    PITCH_KNOWN_TO,
                    flat ? RectangularFrame.Lay.FLAT : RectangularFrame.Lay.BOX,
                    wire);
        }
    }

    /** A flat card for a spiral, from its inner to its outer diameter. */
    record Card(double inner, double outer) implements Shape {
        @Override
        public String words() {
            return "spiral on a card";
        }

        @Override
        public Former former(Wire wire, OptionalDouble pitch) {
            return new SpiralFormer(inner, ruler(inner), outer, Shape.pitch(wire, pitch), PITCH_KNOWN_TO, wire);
        }
    }

    /** Shapes whose material counts. */
    sealed interface Cored extends Shape permits Stick, Ring {
        Material material();

        /** The same with another material. */
        Cored of(Material other);
    }

    /**
     * A ferrite rod.
     *
     * @param sleeve outside diameter of what lies under the wire
     * @param position of the winding's middle from the rod's
     */
    record Stick(double length, double diameter, double sleeve, double position, Material material) implements Cored {
        @Override
        public String words() {
            return "one layer on a rod";
        }

        @Override
        public RodFormer former(Wire wire, OptionalDouble pitch) {
            return new RodFormer(
                    Rod.of(length, diameter),
                    material,
                    sleeve,
                    ruler(sleeve),
                    position,
                    Shape.pitch(wire, pitch),
                    PITCH_KNOWN_TO,
                    wire);
        }

        @Override
        public Stick of(Material other) {
            return new Stick(length, diameter, sleeve, position, other);
        }
    }

    /**
     * A ring core.
     *
     * @param coverage part of the round that is wound, 0 to 1
     */
    record Ring(double outer, double inner, double height, double coverage, Material material) implements Cored {
        @Override
        public String words() {
            return "one layer on a ring";
        }

        @Override
        public ToroidFormer former(Wire wire, OptionalDouble pitch) {
            return new ToroidFormer(Toroid.rectangular(outer, inner, height), material, coverage, wire);
        }

        @Override
        public Ring of(Material other) {
            return new Ring(outer, inner, height, coverage, other);
        }
    }
}
