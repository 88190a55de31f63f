package galena.bench.invented;

import galena.build.folder.Build;
import galena.build.folder.Calibration;
import galena.build.folder.Overlay;
import galena.build.folder.Stray;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.wiring.CircuitOf;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the invented builder really soldered: the demo build with a coil, a transistor and strays of its own. The transistor is one that
 * its data sheet admits; the strays are beyond those drawn.
 */
final class Truth {
    /** °C in the invented room. */
    static final double ROOM = 22;
    /** °C inside the box when it has warmed up. */
    static final double WARM = 27;
    /** V of the invented battery. */
    static final double SUPPLY = 8.3;

    private Truth() {}

    /** The truth laid over the demo build, in the room. */
    static Overlay over(Build build) {
        Calibration truth = new Calibration(
                InventedBench.DAY,
                Map.of(
                        "Lt",
                        new Calibration.Correction(
                                Optional.of(Quantity.of(1.031, Unit.NUMBER)),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()),
                        "Q1",
                        new Calibration.Correction(
                                Optional.empty(),
                                Optional.of(Quantity.of(7.0e-3, Unit.AMPERE)),
                                Optional.of(Quantity.of(-3.0, Unit.VOLT)),
                                Optional.empty())),
                List.of(stray("drain", 3.4e-12), stray("out", 2.1e-12)),
                List.of());
        Overlay.SupplyState battery = new Overlay.SupplyState(
                SUPPLY, CircuitOf.state(build.supply().orElseThrow()).resistance());
        return Overlay.NONE.withCalibration(truth).atTemperature(ROOM).withSupply(battery);
    }

    private static Stray stray(String net, double farads) {
        return new Stray(net, "ground", Quantity.of(farads, Unit.FARAD));
    }
}
