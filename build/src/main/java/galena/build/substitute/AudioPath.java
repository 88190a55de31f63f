package galena.build.substitute;

import galena.build.folder.Intent;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How the programme reaches the nets it modulates, at both ends of its band and in the middle; the carrier at rest. */
final class AudioPath {
    private static final double MIDDLE = 1000;

    /** Nets with less than this of the strongest audio do not lie on its way. */
    private static final double LEAST = 0.3;

    /** At an end of the band, dB lost beyond what is lost already. */
    private static final double MOST_LOST = 1.5;

    private final Running typical;
    private final double[] band;
    private final List<String> nets = new ArrayList<>();
    private final Optional<double[][]> own;

    AudioPath(Running typical) {
        this.typical = typical;
        Optional<Intent.Programme> programme = typical.build().intent().programme();
        band = new double[] {
            programme.map(p -> p.band().low().value()).orElse(MIDDLE),
            MIDDLE,
            programme.map(p -> p.band().high().value()).orElse(MIDDLE)
        };
        Optional<double[][]> all = typical.audioSource().isEmpty() || programme.isEmpty()
                ? Optional.empty()
                : levels(typical.circuit(), typical.circuit().nets());
        all.ifPresent(levels -> {
            double most = 0;
            for (double[] level : levels) most = Math.max(most, level[1]);
            for (int k = 0; k < levels.length; k++)
                if (levels[k][1] > LEAST * most)
                    nets.add(typical.circuit().nets().get(k));
        });
        own = all.isEmpty() ? Optional.empty() : levels(typical.circuit(), nets);
    }

    /** Whether the band still passes; true where there is no audio. */
    boolean keeps(Circuit changed) {
        if (own.isEmpty()) return true;
        Optional<double[][]> there = levels(changed, nets);
        if (there.isEmpty()) return false;
        for (int k = 0; k < nets.size(); k++) {
            for (int end : new int[] {0, 2}) {
                double was = own.get()[k][end] / own.get()[k][1], is = there.get()[k][end] / there.get()[k][1];
                if (20 * Math.log10(is / was) < -MOST_LOST) return false;
            }
        }
        return true;
    }

    /** By net and frequency, a share of the source's voltage. */
    private Optional<double[][]> levels(Circuit circuit, List<String> at) {
        Equations equations = Equations.of(circuit);
        if (!(OperatingPointLadder.near(equations, typical.point().x()) instanceof OperatingPoint.Found point))
            return Optional.empty();
        Linearised linearised = Linearised.at(equations, point.x());
        double[] drive = equations.unitDeparture(typical.audioSource().orElseThrow());
        double[][] levels = new double[at.size()][band.length];
        for (int f = 0; f < band.length; f++) {
            double[][] x = linearised.respond(band[f], drive);
            for (int k = 0; k < at.size(); k++) {
                int net = equations.net(at.get(k));
                levels[k][f] = Math.hypot(x[0][net], x[1][net]);
            }
        }
        return Optional.of(levels);
    }
}
