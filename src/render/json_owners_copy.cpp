#include "render/json_owners_copy.hpp"

#include "records/codecs/typed.hpp"
#include "render/json_criteria.hpp"
#include "render/json_parts.hpp"

namespace beadbook {
namespace {

nlohmann::json read_json(const CopyRead &read) {
    nlohmann::json out{{"edition", read.copy}, {"page", read.page}, {"by", read.by}, {"on", print(read.on)}};
    if (!read.second.empty()) out["second"] = read.second;
    return out;
}

nlohmann::json confirmation_json(const ConfirmationRecord &one) {
    nlohmann::json out{{"part", one.part}, {"read", read_json(one.read)}};
    if (!one.class_id.empty()) out["class"] = one.class_id;
    return out;
}

nlohmann::json filling_json(const FillingRecord &one) {
    return {{"blank", one.blank},
            {"class", one.class_id},
            {"typed", one.typed},
            {"exact", codec::exact_text(one.value)},
            {"read", read_json(one.read)}};
}

nlohmann::json fallen_json(const CopySheet::Fallen &one) {
    nlohmann::json out = filling_json(one.record);
    out["why"] = one.why;
    return out;
}

template <class List, class Make>
nlohmann::json each_json(const List &list, Make make) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : list) out.push_back(make(one));
    return out;
}

nlohmann::json sheet_json(const CopySheet &sheet) {
    const CriteriaSet &set = *sheet.set;
    nlohmann::json confirmed = nlohmann::json::array();
    for (const auto &one : sheet.entered.confirmations)
        if (one.record.hash == set.hash) confirmed.push_back(confirmation_json(one.record));
    return {{"set", set.name},
            {"edition", set.edition},
            {"hash", set.hash},
            {"blanks", blanks_json(set)},
            {"open", sheet.open()},
            {"confirmed", std::move(confirmed)},
            {"of another text", each_json(sheet.of_other_text, confirmation_json)},
            {"of another blank", each_json(sheet.fallen, fallen_json)}};
}

} // namespace

std::string json_text(const Confirmed &done, const std::vector<std::string> &notes) {
    return render::finished({{"set", done.set},
                             {"edition", done.edition},
                             {"confirmed", each_json(done.confirmations, confirmation_json)}},
                            notes);
}

std::string json_text(const Filled &done, const std::vector<std::string> &notes) {
    return render::finished({{"set", done.set},
                             {"edition", done.edition},
                             {"filled", each_json(done.fillings, filling_json)},
                             {"still open", done.still_open}},
                            notes);
}

std::string json_text(const CopyRetracted &done, const std::vector<std::string> &notes) {
    return render::finished({{"set", done.set},
                             {"withdrawn", done.part},
                             {"was", done.blank ? "filled" : "confirmed"},
                             {"classes", done.classes}},
                            notes);
}

std::string json_text(const CopySheet &sheet, const std::vector<std::string> &notes) {
    return render::finished(sheet_json(sheet), notes);
}

std::string json_text(const std::vector<CopySheet> &sheets, const std::vector<std::string> &notes) {
    return render::finished(each_json(sheets, sheet_json), notes);
}

} // namespace beadbook
