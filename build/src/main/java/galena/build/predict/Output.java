package galena.build.predict;

import galena.build.folder.Build;
import galena.build.wiring.Names;
import galena.engine.circuit.Circuit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Which of a build's quantities is its output. */
final class Output {
    private Output() {}

    /** Current in the aerial; without one, in the coil with the largest carrier current. */
    static Optional<Prediction.Spectrum> spectrum(Build build, List<Prediction.Spectrum> spectra) {
        List<Prediction.Spectrum> currents =
                spectra.stream().filter(s -> s.quantity().startsWith("current")).toList();
        return currents.stream()
                .filter(s ->
                        build.part(s.part()).filter(p -> p.kind().isAerial()).isPresent())
                .findFirst()
                .or(() -> currents.stream()
                        .max(Comparator.comparingDouble(s -> s.fundamental().value())));
    }

    /** The engine's part whose current that of a build's part is: of a wire, the meter at its foot. */
    static String branch(Circuit circuit, String part) {
        String foot = Names.foot(part);
        return circuit.part(foot).isPresent() ? foot : part;
    }
}
