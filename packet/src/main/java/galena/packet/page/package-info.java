/**
 * A packet's pages: {@link galena.packet.page.Page} (open it first) is what stands on them, {@link galena.packet.page.PageHtml} writes
 * it as one self-contained HTML page, {@link galena.packet.page.PagePdf} prints that page to PDF with drawings as lines and text
 * as text. Absent on purpose: knowing what any of it means.
 */
@NullMarked
package galena.packet.page;

import org.jspecify.annotations.NullMarked;
