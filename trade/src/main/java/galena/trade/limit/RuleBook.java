package galena.trade.limit;

import galena.trade.source.DataTable;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Every region and rule held. */
public final class RuleBook {
    private final Map<String, Region> regions;
    private final Map<String, List<Rule>> rules;

    private RuleBook(Map<String, Region> regions, Map<String, List<Rule>> rules) {
        this.regions = regions;
        this.rules = rules;
    }

    private static final class Standard {
        static final RuleBook BOOK = new RuleBook(
                RuleTable.regions(DataTable.resource(RuleBook.class, "regions.csv")),
                RuleTable.rules(DataTable.resource(RuleBook.class, "rules.csv")));
    }

    /** The book shipped with Galena. */
    public static RuleBook standard() {
        return Standard.BOOK;
    }

    /** All regions, once each. */
    public List<Region> regions() {
        return regions.values().stream().distinct().toList();
    }

    /** A region by its code or another of its names. */
    public Optional<Region> region(String name) {
        return Optional.ofNullable(regions.get(name.strip().toLowerCase(Locale.ROOT)));
    }

    /** Every rule of a region, held for other kinds of station too; empty for regions without figures. */
    public List<Rule> rules(Region region) {
        List<Rule> held = rules.get(region.code());
        return held == null ? List.of() : List.copyOf(held);
    }

    /**
     * How a transmission stands in a region.
     *
     * @param region code or name, as "us", "ca", "cept"
     */
    public LimitAnswer judge(String region, Transmission transmission) {
        Optional<Region> found = region(region);
        if (found.isEmpty()) {
            return new LimitAnswer.UnknownRegion(
                    region, regions().stream().map(Region::code).toList());
        }
        if (!found.get().held()) return new LimitAnswer.NotHeld(found.get());
        return new LimitAnswer.Judged(found.get(), new Judge(rules(found.get()), transmission).routes());
    }

    /** Bands of a region in which no carrier may lie and harmonics meet the general limits. */
    public List<Rule> restrictedBands(Region region) {
        return rules(region).stream()
                .filter(rule -> rule.scope() == Rule.Scope.RESTRICTED)
                .toList();
    }
}
