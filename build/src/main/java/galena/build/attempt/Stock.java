package galena.build.attempt;

import galena.build.folder.Drawer;
import galena.build.folder.Drawer.CoilHeld;
import galena.build.folder.PartKind;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.trade.device.Device;
import galena.trade.device.DeviceLibrary;
import galena.trade.device.Family;
import galena.trade.device.Lookup;
import galena.trade.preferred.Series;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** What values can be had: those in the drawer, or where it has none of a kind, those that shops keep. */
public final class Stock {
    private static final Series SHOP = Series.E12;

    /** A drawer's value this far from the wanted one is no help: the shop's is taken and said so. */
    private static final double TOO_FAR = 1.3;

    private static final double COIL_TOO_FAR = 1.6;

    private static final List<String> USUAL_TRIMMERS = List.of("5..60 pF", "6..50 pF", "10..100 pF");

    private final Drawer drawer;

    public Stock(Drawer drawer) {
        this.drawer = drawer;
    }

    private double[] values(PartKind kind) {
        List<Quantity> held =
                switch (kind) {
                    case RESISTOR -> drawer.resistors();
                    case PRESET -> drawer.presets();
                    case CAPACITOR -> drawer.capacitors();
                    default -> List.of();
                };
        return held.stream().mapToDouble(Quantity::value).distinct().sorted().toArray();
    }

    /** Whether the builder has it, or has no parts of the kind written down at all. */
    public boolean holds(PartKind kind, double value) {
        double[] held = values(kind);
        return held.length == 0 || DoubleStream.of(held).anyMatch(h -> Math.abs(h / value - 1) < 1e-6);
    }

    /** The nearest by ratio. */
    public double nearest(PartKind kind, double value) {
        OptionalDouble held = DoubleStream.of(values(kind))
                .boxed()
                .min(Comparator.comparingDouble(h -> Math.abs(Math.log(h / value))))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
        if (held.isPresent() && Math.abs(Math.log(held.getAsDouble() / value)) < Math.log(TOO_FAR))
            return held.getAsDouble();
        return SHOP.nearest(value);
    }

    /** The next value upwards (1) or downwards (−1); none at the end of a drawer. */
    public OptionalDouble next(PartKind kind, double value, int way) {
        double[] held = values(kind);
        if (held.length > 0)
            return way > 0
                    ? DoubleStream.of(held).filter(h -> h > value * (1 + 1e-9)).min()
                    : DoubleStream.of(held).filter(h -> h < value * (1 - 1e-9)).max();
        double beyond = way > 0 ? value * (1 + 1e-6) : value / (1 + 1e-6);
        return OptionalDouble.of(way > 0 ? SHOP.atLeast(beyond) : SHOP.atMost(beyond));
    }

    /** The trimmer ranges that can be had. */
    public List<Range> trimmers() {
        if (!drawer.trimmers().isEmpty()) return drawer.trimmers();
        List<Range> usual = new ArrayList<>();
        for (String text : USUAL_TRIMMERS) {
            try {
                usual.add(Range.read(text, Unit.FARAD));
            } catch (BadQuantity never) {
                throw new IllegalStateException(text, never);
            }
        }
        return usual;
    }

    /** The drawer's coil nearest to an inductance (H); none where the nearest is no help and one is wound instead. */
    public Optional<CoilHeld> coil(double inductance) {
        return drawer.coils().stream()
                .filter(c -> Math.abs(Math.log(c.inductance().value() / inductance)) < Math.log(COIL_TOO_FAR))
                .min(Comparator.comparingDouble(
                        c -> Math.abs(Math.log(c.inductance().value() / inductance))));
    }

    public boolean hasDevices() {
        return !drawer.devices().isEmpty();
    }

    public boolean holdsDevice(String type) {
        return drawer.devices().stream().anyMatch(d -> key(d).equals(key(type)));
    }

    /** The drawer's devices that a kind of part may be named from, as far as the library knows them. */
    public List<String> devices(PartKind kind) {
        return drawer.devices().stream()
                .map(DeviceLibrary.standard()::find)
                .filter(Lookup.Known.class::isInstance)
                .map(l -> ((Lookup.Known) l).device())
                .filter(d -> fits(kind, d))
                .map(Device::type)
                .distinct()
                .toList();
    }

    public static boolean fits(PartKind kind, Device device) {
        Family family = device.family();
        return switch (kind) {
            case JFET -> family == Family.N_JFET;
            case NPN -> family == Family.NPN;
            case PNP -> family == Family.PNP;
            case DIODE -> family == Family.SILICON_DIODE;
            case DUAL_GATE_MOSFET -> family == Family.DUAL_GATE_N_MOSFET;
            default -> false;
        };
    }

    private static String key(String type) {
        return type.replaceAll("[\\s-]", "").toUpperCase(java.util.Locale.ROOT);
    }

    public List<Quantity> crystals() {
        return drawer.crystals();
    }

    public List<Quantity> resonators() {
        return drawer.resonators();
    }
}
