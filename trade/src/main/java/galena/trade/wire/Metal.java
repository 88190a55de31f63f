package galena.trade.wire;

import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import java.util.List;

/**
 * A conductor's metal.
 *
 * @param name as in the table
 * @param resistivity20 resistivity at 20 °C (Ω m)
 * @param temperatureCoefficient at 20 °C (1/K); 0 where the source gives none, see {@link #resistivity}
 * @param source where both figures come from
 * @param basis the weaker of the two figures' bases
 */
public record Metal(String name, double resistivity20, double temperatureCoefficient, String source, Basis basis) {
    private static final List<Metal> TABLE = DataTable.resource(Metal.class, "metals.csv").rows().stream()
            .map(row -> new Metal(
                    row.text("name"),
                    row.required("resistivity_ohm_m"),
                    row.required("coefficient_per_K"),
                    row.text("source"),
                    Basis.named(row.text("basis"))))
            .toList();

    /** Annealed copper, 100 % of the international standard (IEC 60028): what winding wire is made of. */
    public static final Metal COPPER = TABLE.get(0);

    /** Range over which the straight law of resistance is taken (°C); winding wire's usual duty. */
    private static final double COLDEST = -60;

    private static final double HOTTEST = 200;

    public Metal {
        OutOfRange.requirePositive("resistivity of " + name + " (ohm m)", resistivity20);
        OutOfRange.require("temperature coefficient of " + name + " (1/K)", temperatureCoefficient, 0, 0.01, "");
    }

    /** Every metal held, copper first. */
    public static List<Metal> table() {
        return TABLE;
    }

    /**
     * ρ(T) = ρ20·(1 + α20·(T − 20 °C)), the straight law of IEC 60028.
     *
     * @param celsius temperature, −60 to 200 °C
     * @return resistivity (Ω m)
     * @throws OutOfRange outside those temperatures, or away from 20 °C for a metal without a coefficient
     */
    public double resistivity(double celsius) {
        OutOfRange.require("temperature (°C)", celsius, COLDEST, HOTTEST, "Wire is reckoned within these.");
        if (temperatureCoefficient == 0) {
            OutOfRange.require(
                    "temperature of " + name + " (°C)", celsius, 15, 25, "No temperature coefficient is held.");
        }
        return resistivity20 * (1 + temperatureCoefficient * (celsius - 20));
    }
}
