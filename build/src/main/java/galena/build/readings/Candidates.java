package galena.build.readings;

import galena.build.folder.Build;
import galena.build.predict.Running;
import galena.build.wiring.Unknowns;
import galena.engine.circuit.Circuit;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What may be there though nobody drew it: capacitance from every net that swings to ground, and between any two of them; and
 * coupling of any two coils that are not drawn as coupled. A net at rest is as good as ground for a stray that ends there.
 */
final class Candidates {
    /** Of the largest swing in the build. */
    private static final double SWINGS = 0.01;

    private static final int MOST = 7;

    private Candidates() {}

    static List<Part> of(Build build, Running drawn) {
        Waveforms w = drawn.state().waveforms();
        double largest = build.nets().stream()
                .filter(net -> !net.equals(Circuit.GROUND))
                .mapToDouble(net -> swing(w, net))
                .max()
                .orElse(0);
        List<String> swinging = build.nets().stream()
                .filter(net -> !net.equals(Circuit.GROUND) && swing(w, net) > SWINGS * largest)
                .sorted(Comparator.comparingDouble(net -> -swing(w, net)))
                .limit(MOST)
                .toList();
        List<Part> added = new ArrayList<>();
        for (int i = 0; i < swinging.size(); i++) {
            added.add(Unknowns.added(swinging.get(i), Circuit.GROUND));
            for (int j = i + 1; j < swinging.size(); j++) added.add(Unknowns.added(swinging.get(i), swinging.get(j)));
        }
        couplings(drawn.circuit(), added);
        return added;
    }

    /** Nets that stand still beside the others. */
    static Set<String> still(Build build, Running drawn) {
        Waveforms w = drawn.state().waveforms();
        double largest =
                build.nets().stream().mapToDouble(net -> swing(w, net)).max().orElse(0);
        Set<String> still = new HashSet<>(build.nets());
        still.removeIf(net -> swing(w, net) > SWINGS * largest);
        return still;
    }

    private static double swing(Waveforms w, String net) {
        return w.voltageAmplitude(net, Circuit.GROUND, 1);
    }

    private static void couplings(Circuit circuit, List<Part> added) {
        List<String> coils = circuit.parts().stream()
                .filter(Coil.class::isInstance)
                .map(Part::name)
                .toList();
        for (int i = 0; i < coils.size(); i++) {
            for (int j = i + 1; j < coils.size(); j++) {
                String one = coils.get(i), other = coils.get(j);
                boolean drawn = circuit.parts().stream()
                        .anyMatch(p -> p instanceof Coupling k
                                && List.of(k.first(), k.second()).containsAll(List.of(one, other)));
                if (!drawn) added.add(Unknowns.addedCoupling(one, other));
            }
        }
    }
}
