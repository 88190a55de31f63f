package galena.build.winding;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a trial winding told.
 *
 * @param shape in words
 * @param wire in words
 * @param turns on it
 * @param measured inductance, with its uncertainty
 * @param reckoned inductance without the measurement (H); of a core, with the permeability found
 * @param permeability of the core, where there is one, or why it can't be told
 * @param wanted turns for the wanted inductance, not whole
 * @param change whole turns to add, negative to take off; empty where nothing was wanted
 * @param slide for the wanted inductance with the turns as they are: the winding's middle from the rod's (m), or why sliding
 *     does not reach it; empty off a rod and where nothing was wanted
 * @param notes what to know besides
 */
public record Trial(
        String shape,
        String wire,
        int turns,
        Figure.Known measured,
        Figure reckoned,
        Optional<Figure> permeability,
        Optional<Figure> wanted,
        OptionalInt change,
        Optional<Figure> slide,
        List<String> notes) {
    public Trial {
        notes = List.copyOf(notes);
    }
}
