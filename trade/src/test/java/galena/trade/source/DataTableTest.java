package galena.trade.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class DataTableTest {
    @Test
    void a_damaged_row_is_refused_with_its_place() {
        List<DataTable.Row> rows =
                DataTable.resource(DataTableTest.class, "damaged.csv").rows();
        assertThat(rows.get(0).required("value")).isEqualTo(1.5);
        assertThat(rows.get(0).provenance().basis()).isEqualTo(Basis.COMPUTED);
        assertThatThrownBy(() -> rows.get(1).number("value"))
                .hasMessageContaining("damaged.csv")
                .hasMessageContaining("record 2")
                .hasMessageContaining("many");
        assertThatThrownBy(() -> rows.get(1).provenance()).hasMessageContaining("guessed");
        assertThatThrownBy(() -> rows.get(2).provenance()).hasMessageContaining("says not where");
        assertThat(rows.get(3).number("value")).isEmpty();
        assertThatThrownBy(() -> rows.get(3).required("value")).hasMessageContaining("needed");
        assertThatThrownBy(() -> rows.get(0).text("colour")).hasMessageContaining("no such column");
    }

    @Test
    void printed_units_come_apart_into_prefix_and_base() {
        assertThat(PrintedUnit.of("pF").toSi(4.7)).isEqualTo(4.7e-12);
        assertThat(PrintedUnit.of("µV/m").base()).isEqualTo("V/m");
        assertThat(PrintedUnit.of("MHz").toSi(300)).isEqualTo(300e6);
        assertThat(PrintedUnit.of("m").base()).isEqualTo("m");
        assertThat(PrintedUnit.of("mW").toSi(100)).isCloseTo(0.1, within(1e-15));
        assertThat(PrintedUnit.of("ohm").base()).isEqualTo("Ω");
        assertThat(PrintedUnit.of("").toSi(3)).isEqualTo(3);
    }

    @Test
    void the_weakest_basis_counts() {
        assertThat(Basis.weakest(List.of(Basis.SEEN, Basis.MEMORY, Basis.COMPUTED)))
                .isEqualTo(Basis.MEMORY);
        assertThat(Basis.MEMORY.isVerified()).isFalse();
        assertThat(Basis.SEEN.isVerified()).isTrue();
    }
}
