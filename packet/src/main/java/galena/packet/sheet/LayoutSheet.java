package galena.packet.sheet;

import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Section;
import java.util.List;
import java.util.Optional;

/** How to lay it out: what the sensitivities say in words. */
final class LayoutSheet {
    private LayoutSheet() {}

    static Optional<Section> of(Findings findings) {
        return findings.expected()
                .guard()
                .filter(g -> !g.advice().isEmpty())
                .map(g -> new Section(
                        "layout", "Layout: what to keep short, still and apart", List.of(new Bullets(g.advice()))));
    }
}
