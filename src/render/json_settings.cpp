#include "render/json_settings.hpp"

#include "render/json_parts.hpp"

namespace beadbook {

std::string json_text(const SettingsInForce &all, const std::vector<std::string> &notes) {
    nlohmann::json settings = nlohmann::json::array();
    for (const auto &one : all.settings)
        settings.push_back(
            {{"command", one.command}, {"option", one.option}, {"value", one.value}, {"from", one.from}});
    return render::finished({{"file", all.file}, {"there", all.there}, {"settings", settings}}, notes);
}

std::string json_text(const PlainText &plain, const std::vector<std::string> &notes) {
    return render::finished({{"text", plain.text}}, notes);
}

} // namespace beadbook
