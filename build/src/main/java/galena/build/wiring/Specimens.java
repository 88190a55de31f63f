package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.engine.part.Bipolar;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Part;
import galena.trade.device.BipolarData;
import galena.trade.device.BipolarModel;
import galena.trade.device.Derived;
import galena.trade.device.Device;
import galena.trade.device.DualGateMosfetData;
import galena.trade.device.DualGateMosfetModel;
import galena.trade.device.JfetData;
import galena.trade.device.JfetSpread;
import galena.trade.device.Lookup;
import java.util.List;
import java.util.Optional;

/**
 * The weakest and the strongest specimen that a device's data sheet admits, in place of the typical one. Only devices named by
 * type have a spread; one given by its own parameters is that specimen.
 */
public final class Specimens {
    /** Where a small-signal stage of these transmitters works: printed gains near here count. */
    private static final double USUAL_COLLECTOR_CURRENT = 1e-3;

    private Specimens() {}

    /** Two engine parts of the same name and pins. */
    public record Pair(Part weak, Part strong) {}

    /**
     * @param entry a part of the build
     * @param typical the engine's part of that entry
     * @return empty for parts without a printed spread
     */
    public static Optional<Pair> of(Build build, PartEntry entry, Part typical) {
        if (entry.type().isEmpty() || !(build.devices().find(entry.type().get()) instanceof Lookup.Known known)) {
            return Optional.empty();
        }
        Device device = known.device();
        if (typical instanceof Jfet jfet && device instanceof JfetData data) return jfet(jfet, data);
        if (typical instanceof Bipolar bipolar && device instanceof BipolarData data) return bipolar(bipolar, data);
        if (typical instanceof DualGateMosfet dual
                && device instanceof DualGateMosfetData data
                && data.corners() instanceof Derived<List<DualGateMosfetModel>> corners) {
            return Optional.of(new Pair(
                    with(dual, corners.model().get(0)),
                    with(dual, corners.model().get(corners.model().size() - 1))));
        }
        return Optional.empty();
    }

    /**
     * Specimens at random, in place of the typical one.
     *
     * @return empty for parts without a printed spread
     */
    public static Optional<Draw> drawn(Build build, PartEntry entry, Part typical) {
        if (entry.type().isEmpty() || !(build.devices().find(entry.type().get()) instanceof Lookup.Known known)) {
            return Optional.empty();
        }
        Device device = known.device();
        if (typical instanceof Jfet jfet
                && device instanceof JfetData data
                && data.spread() instanceof Derived<JfetSpread> spread) {
            return Optional.of(new JfetDraw(jfet, spread.model()));
        }
        if (typical instanceof Bipolar bipolar
                && device instanceof BipolarData data
                && data.corners(USUAL_COLLECTOR_CURRENT) instanceof Derived<List<BipolarModel>> corners) {
            return Optional.of(new BipolarDraw(bipolar, corners.model()));
        }
        if (typical instanceof DualGateMosfet dual
                && device instanceof DualGateMosfetData data
                && data.corners() instanceof Derived<List<DualGateMosfetModel>> corners) {
            return Optional.of(new DualGateDraw(dual, corners.model()));
        }
        return Optional.empty();
    }

    private record JfetDraw(Jfet part, JfetSpread spread) implements Draw {
        @Override
        public int numbers() {
            return 2;
        }

        @Override
        public String name(int k) {
            return k == 0 ? "saturation current" : "transconductance";
        }

        @Override
        public Part at(double[] u, int at) {
            return with(part, DeviceModels.jfet(spread.at(u[at], u[at + 1])));
        }
    }

    /** Gain even by ratio between the printed limits. */
    private record BipolarDraw(Bipolar part, List<BipolarModel> corners) implements Draw {
        @Override
        public int numbers() {
            return 1;
        }

        @Override
        public String name(int k) {
            return "current gain";
        }

        @Override
        public Part at(double[] u, int at) {
            Bipolar.Model model = DeviceModels.bipolar(corners.get(0));
            double low = model.forwardBeta(),
                    high = corners.get(corners.size() - 1).forwardBeta();
            return with(part, model.withForwardBeta(low * Math.pow(high / low, u[at])));
        }
    }

    /** IDSS even by ratio between the printed limits; both cutoffs follow it. */
    private record DualGateDraw(DualGateMosfet part, List<DualGateMosfetModel> corners) implements Draw {
        @Override
        public int numbers() {
            return 1;
        }

        @Override
        public String name(int k) {
            return "saturation current";
        }

        @Override
        public Part at(double[] u, int at) {
            DualGateMosfetModel weak = corners.get(0);
            double low = weak.saturationCurrent(),
                    high = corners.get(corners.size() - 1).saturationCurrent();
            return with(part, weak.withSaturationCurrent(low * Math.pow(high / low, u[at])));
        }
    }

    private static DualGateMosfet with(DualGateMosfet part, DualGateMosfetModel model) {
        return new DualGateMosfet(
                part.name(),
                part.polarity(),
                part.drain(),
                part.gate2(),
                part.gate1(),
                part.source(),
                DeviceModels.lower(model),
                DeviceModels.upper(model));
    }

    private static Optional<Pair> jfet(Jfet part, JfetData data) {
        if (!(data.spread() instanceof Derived<JfetSpread> derived)) return Optional.empty();
        JfetSpread spread = derived.model();
        return Optional.of(
                new Pair(with(part, DeviceModels.jfet(spread.weak())), with(part, DeviceModels.jfet(spread.strong()))));
    }

    private static Jfet with(Jfet part, Jfet.Model model) {
        return new Jfet(part.name(), part.polarity(), part.drain(), part.gate(), part.source(), model);
    }

    private static Optional<Pair> bipolar(Bipolar part, BipolarData data) {
        if (!(data.corners(USUAL_COLLECTOR_CURRENT) instanceof Derived<List<BipolarModel>> derived)) {
            return Optional.empty();
        }
        List<BipolarModel> corners = derived.model();
        return Optional.of(new Pair(
                with(part, DeviceModels.bipolar(corners.get(0))),
                with(part, DeviceModels.bipolar(corners.get(corners.size() - 1)))));
    }

    private static Bipolar with(Bipolar part, Bipolar.Model model) {
        return new Bipolar(part.name(), part.polarity(), part.collector(), part.base(), part.emitter(), model);
    }
}
