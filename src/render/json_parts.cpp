#include "render/json_parts.hpp"

#include "records/codecs/typed.hpp"

namespace beadbook::render {

std::string finished(nlohmann::json json, const std::vector<std::string> &notes) {
    if (json.is_object() && !notes.empty()) json["notes"] = notes;
    return json.dump(2) + "\n";
}

nlohmann::json number(const Exact &value, Dimension dimension, Unit unit) {
    return {{"text", print(value, dimension, unit)}, {"exact", codec::exact_text(value)}};
}

} // namespace beadbook::render
