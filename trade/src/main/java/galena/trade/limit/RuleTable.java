package galena.trade.limit;

import galena.trade.source.DataTable;
import galena.trade.source.Provenance;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads the tables of rules and regions. */
final class RuleTable {
    private RuleTable() {}

    record Draft(
            String id,
            String route,
            String section,
            Rule.Scope scope,
            String applies,
            double low,
            double high,
            Rule.Quantity quantity,
            Optional<LimitLaw> law,
            String unit,
            Optional<LimitLaw> distance,
            String detector,
            String alternative,
            Provenance provenance) {}

    static Map<String, List<Rule>> rules(DataTable table) {
        Map<String, List<Rule>> byRegion = new LinkedHashMap<>();
        for (DataTable.Row row : table.rows()) {
            byRegion.computeIfAbsent(row.text("region"), code -> new ArrayList<>())
                    .add(rule(row));
        }
        return byRegion;
    }

    private static Rule rule(DataTable.Row row) {
        try {
            Rule.Quantity quantity = Rule.Quantity.valueOf(row.text("quantity").toUpperCase(Locale.ROOT));
            boolean reference = quantity == Rule.Quantity.REFERENCE;
            String distance = row.text("distance_m");
            return new Rule(new Draft(
                    row.text("id"),
                    row.text("route"),
                    row.text("section"),
                    Rule.Scope.valueOf(row.text("scope").toUpperCase(Locale.ROOT)),
                    row.text("applies"),
                    row.number("low_hz").orElse(0),
                    row.number("high_hz").orElse(Double.POSITIVE_INFINITY),
                    quantity,
                    reference ? Optional.empty() : Optional.of(LimitLaw.of(row.text("law"))),
                    row.text("unit"),
                    distance.isEmpty() ? Optional.empty() : Optional.of(LimitLaw.of(distance)),
                    row.text("detector"),
                    row.text("or"),
                    row.provenance()));
        } catch (IllegalArgumentException e) {
            throw row.fault("law", String.valueOf(e.getMessage()));
        }
    }

    /** Regions by code and by every other name they answer to. */
    static Map<String, Region> regions(DataTable table) {
        Map<String, Region> byName = new LinkedHashMap<>();
        for (DataTable.Row row : table.rows()) {
            Region region = new Region(
                    row.text("code"),
                    row.text("name"),
                    row.text("held").equals("yes"),
                    row.text("check"),
                    row.text("note"));
            byName.put(region.code(), region);
            for (String other : row.text("also").split(";")) byName.put(other, region);
        }
        return byName;
    }
}
