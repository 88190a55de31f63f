package galena.build.folder;

import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import java.util.Optional;

/**
 * What the builder wants; whatever isn't written isn't judged.
 *
 * @param carrier wanted frequency
 * @param rules the region whose limits apply, by name
 * @param distance how far it shall be heard
 * @param modulation depth wanted
 * @param programme what is sent
 * @param runtime how long one battery shall last
 * @param harmonics strongest harmonic allowed, dB against the carrier
 * @param raster spacing of the region's channels
 */
public record Intent(
        Optional<Quantity> carrier,
        Optional<String> rules,
        Optional<Quantity> distance,
        Optional<Quantity> modulation,
        Optional<Programme> programme,
        Optional<Quantity> runtime,
        Optional<Quantity> harmonics,
        Optional<Quantity> raster) {
    /**
     * What is sent.
     *
     * @param level peak voltage of the source
     * @param band lowest to highest audio frequency
     */
    public record Programme(Quantity level, Range band) {}
}
