package galena.desk.command;

import galena.build.quantity.Unit;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** The options that say where a build is used. */
final class Whereabouts {
    @Option(
            names = "--around",
            paramLabel = "PLACE",
            description = "What surrounds the house: city, residential, rural or quiet-rural; residential unless said.")
    private String around = "residential";

    @Option(
            names = "--indoors",
            paramLabel = "DB",
            description = "What the room adds to the noise outside, as in --indoors \"15 dB\"; nothing unless said.")
    private Optional<String> indoors = Optional.empty();

    @Option(
            names = "--noise",
            paramLabel = "FIELD",
            description = "Noise read in the room instead, as in --noise \"100 µV/m\".")
    private Optional<String> noise = Optional.empty();

    @Option(
            names = "--neighbour",
            paramLabel = "DISTANCE",
            description = "How far off the nearest set of a neighbour is, as in --neighbour \"8 m\".")
    private Optional<String> neighbour = Optional.empty();

    @Option(
            names = "--final-stage",
            paramLabel = "POWER",
            description = "Power that the final radio-frequency stage alone takes, as in --final-stage \"40 mW\", for"
                    + " rules that limit it.")
    private Optional<String> finalStage = Optional.empty();

    Surroundings surroundings() throws BadInputException {
        Asked asked = new Asked();
        OptionalDouble excess = asked.quantity("--indoors", indoors, Unit.DECIBEL, -40, 80);
        OptionalDouble reading = asked.quantity("--noise", noise, Unit.VOLT_PER_METRE, 1e-8, 10);
        OptionalDouble distance = asked.quantity("--neighbour", neighbour, Unit.METRE, 0.5, 10_000);
        OptionalDouble power = asked.quantity("--final-stage", finalStage, Unit.WATT, 1e-6, 100);
        List<String> places = Surroundings.places();
        if (!places.contains(around))
            asked.wrong(
                    "--around",
                    "no surroundings are called \"" + around + '"',
                    "Known: " + String.join(", ", places) + ".");
        if (noise.isPresent() && indoors.isPresent())
            asked.wrong("--indoors", "is given beside a reading", "A noise read in the room holds what the room adds.");
        asked.done();
        return Surroundings.in(around, excess.orElse(0), reading, distance, power);
    }
}
