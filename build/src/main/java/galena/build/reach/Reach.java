package galena.build.reach;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Optional;

/**
 * How far a build reaches and how it stands to the rules. Made by {@link Reaching}.
 *
 * @param name of the build
 * @param digest of the prediction it rests on
 * @param aerial what radiates, in words
 * @param moment magnetic moment of the carrier, rms; of a wire, why it has none
 * @param emissions carrier and harmonics
 * @param levels field of the carrier at plain distances and where the intent wants it heard
 * @param harmonicLevels field of each harmonic at the distance wanted, else at ten metres; by order
 * @param curve field of the carrier, closely spaced
 * @param positivePeak of the modulation, at which quasi-peak limits are judged too
 * @param depth of loud passages
 * @param rules of the region
 * @param surroundings noise in words
 * @param wanted distance that the intent wants (m)
 * @param neighbour distance of the neighbour's set (m)
 * @param hearing by class of set; empty where the notes say why
 * @param caution stands beside every verdict
 * @param notes what a builder should know besides
 */
public record Reach(
        String name,
        String digest,
        String aerial,
        Figure moment,
        List<Emission> emissions,
        List<Level> levels,
        List<HarmonicLevel> harmonicLevels,
        List<Level> curve,
        Figure positivePeak,
        Figure depth,
        Rules rules,
        String surroundings,
        Optional<Double> wanted,
        Optional<Double> neighbour,
        List<Hearing> hearing,
        String caution,
        List<String> notes)
        implements ReachAnswer {
    public Reach {
        emissions = List.copyOf(emissions);
        levels = List.copyOf(levels);
        harmonicLevels = List.copyOf(harmonicLevels);
        curve = List.copyOf(curve);
        hearing = List.copyOf(hearing);
        notes = List.copyOf(notes);
    }

    /** One harmonic at one distance. */
    public record HarmonicLevel(Emission emission, Level level) {}

    public Emission carrier() {
        return emissions.get(0);
    }
}
