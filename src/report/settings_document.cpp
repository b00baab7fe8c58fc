#include "report/settings_document.hpp"

#include "measure/text.hpp"

namespace beadbook {

Document document_of(const SettingsInForce &all) {
    Document doc;
    for (const auto &one : all.settings)
        doc.line(padded(one.command, 10) + " " + padded(one.option, 14) + " " + one.value + "   (" +
                 one.from + ")");
    if (all.settings.empty()) doc.line("nothing is set; each call says all it needs");
    doc.line(all.file.empty()
                 ? "no folder for settings is known"
                 : "the file of settings is " + all.file + (all.there ? "" : ", and is not there"));
    return doc;
}

Document document_of(const PlainText &plain) { return Document{}.line(plain.text); }

} // namespace beadbook
