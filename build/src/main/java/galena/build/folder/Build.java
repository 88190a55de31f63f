package galena.build.folder;

import galena.build.source.Node.Mapping;
import galena.build.source.Place;
import galena.build.source.SourceFile;
import galena.trade.device.DeviceLibrary;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One transmitter, or a stage of one, as {@code build.yaml} has it. Immutable.
 *
 * @param file the text it was read from
 * @param top the tree of that text, for places
 * @param name the builder's own name for it, or the folder's
 * @param intent what it is for
 * @param supply what feeds it; a single stage may be fed by ideal sources among the parts instead
 * @param parts by name, in the order of the file
 * @param strays small capacitances
 * @param couplings pairs of coils
 * @param points test points by name
 * @param devices the library that its devices were looked up in
 */
public record Build(
        SourceFile file,
        Mapping top,
        String name,
        Intent intent,
        Optional<Supply> supply,
        Map<String, PartEntry> parts,
        List<Stray> strays,
        List<Coupled> couplings,
        Map<String, TestPoint> points,
        DeviceLibrary devices) {
    public Build {
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        strays = List.copyOf(strays);
        couplings = List.copyOf(couplings);
        points = Collections.unmodifiableMap(new LinkedHashMap<>(points));
    }

    public Optional<PartEntry> part(String partName) {
        return Optional.ofNullable(parts.get(partName));
    }

    /** Names of the parts with a position to set. */
    public List<String> adjustments() {
        return parts.values().stream()
                .filter(PartEntry::isAdjustable)
                .map(PartEntry::name)
                .toList();
    }

    /** Every net that a part or the supply joins, ground included, in order of first mention. */
    public Set<String> nets() {
        Set<String> nets = new LinkedHashSet<>();
        supply.ifPresent(s -> nets.addAll(List.of(s.plus(), s.minus())));
        parts.values().forEach(part -> nets.addAll(part.pins().values()));
        return nets;
    }

    /** Where a path stands in the file; the top of the file if it isn't there. */
    public Place place(String path) {
        return top.find(path).map(node -> node.place()).orElse(top.place());
    }

    /** Where a net is first joined; the top of the file if no pin joins it. */
    public Place placeOfNet(String net) {
        for (PartEntry part : parts.values())
            for (String pin : part.kind().pins())
                if (part.pin(pin).equals(net)) return part.values().place(pin);
        return top.place();
    }
}
