package galena.build.spread;

import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import java.util.Optional;

/**
 * Judges changed copies of a build as {@link Spread} judges drawn ones: solved, trimmed to the channel, read and held against the
 * intent. For questions by the hundred about other parts in their places. Many threads may share one.
 */
public final class Judge {
    private final Running typical;
    private final Sampler sampler;

    /** @param typical the build as it stands */
    public Judge(Running typical, Progress progress) {
        this.typical = typical;
        sampler = new Sampler(typical, Conditions.FULL, typical.strongestTrimmer(), progress);
    }

    /** The build itself. */
    public Drawn typical() {
        return sampler.judge(typical.circuit());
    }

    /**
     * @param changed a circuit with other values, or other devices of the same kinds
     * @return empty when its structure is another, as where a diode with a series resistance stands for one without
     */
    public Optional<Drawn> judge(Circuit changed) {
        Equations there = Equations.of(changed), here = Equations.of(typical.circuit());
        return there.pattern().sameAs(here.pattern()) ? Optional.of(sampler.judge(changed)) : Optional.empty();
    }
}
