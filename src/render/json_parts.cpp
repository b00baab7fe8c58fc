#include "render/json_parts.hpp"

#include "measure/text.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::render {

std::string finished(nlohmann::json json, const std::vector<std::string> &notes) {
    if (json.is_object() && !notes.empty()) json["notes"] = notes;
    return escaped_for_json(json.dump(2)) + "\n";
}

nlohmann::json number(const Exact &value, Dimension dimension, Unit unit) {
    return {{"text", print(value, dimension, unit)}, {"exact", codec::exact_text(value)}};
}

void add_taken_back(nlohmann::json &json, const std::vector<TakenBack> &finds) {
    for (const auto &one : finds) {
        nlohmann::json out{{"number", one.number},
                           {"was", one.was},
                           {"why", one.why},
                           {"at", one.stamp.at},
                           {"by", one.stamp.who}};
        if (!one.now.empty()) out["now"] = one.now;
        json["logged otherwise before"].push_back(std::move(out));
    }
}

} // namespace beadbook::render
