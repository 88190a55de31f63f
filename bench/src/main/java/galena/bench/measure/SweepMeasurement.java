package galena.bench.measure;

import galena.bench.capture.OnePort;
import galena.signal.Estimate;
import java.util.Optional;

/** Resonance and Q from a one-port sweep. */
final class SweepMeasurement {
    private SweepMeasurement() {}

    static void into(Sheet sheet, OnePort sweep) {
        Optional<ReflectionCircle> circle = ReflectionCircle.through(sweep);
        if (circle.isEmpty()) {
            String why = "the sweep shows no circle of one resonance";
            sheet.miss("resonance", "resonance", "Hz", why);
            sheet.miss("q.unloaded", "unloaded Q", "", why);
            return;
        }
        ReflectionCircle c = circle.get();
        sheet.add(
                "resonance",
                "resonance",
                c.frequency(),
                "Hz",
                "circle of the reflection, all points of the sweep within the resonance");
        sheet.add("q.loaded", "loaded Q", c.loadedQ(), "", "loaded by the analyser through the coupling");
        sheet.add("q.unloaded", "unloaded Q", c.unloadedQ(), "", "the coupling taken off");
        sheet.add("coupling", "coupling", new Estimate(c.coupling(), c.coupling(), c.coupling()), "", "1 is critical");
    }
}
