#include "render/json_keeping.hpp"

#include "render/json_parts.hpp"

namespace beadbook {
namespace {

using What = ReplayFault::What;

const char *id_of(What what) {
    switch (what) {
    case What::unreadable: return "unreadable";
    case What::unknown_form: return "unknown form";
    case What::text_missing: return "text missing";
    case What::text_broken: return "text broken";
    case What::verdict: return "verdict";
    case What::findings: return "findings";
    case What::head: return "criteria";
    case What::range: break;
    }
    return "range";
}

nlohmann::json json_of(const ReplayFault &f) {
    nlohmann::json out{{"kind", id_of(f.what)}, {name_of(f.family), f.subject}, {"sentence", sentence(f)}};
    if (f.entry > 0) out["entry"] = f.entry;
    if (f.number > 0) out["qualification"] = f.number;
    if (!f.part.empty()) out["class"] = f.part;
    if (!f.was.empty()) out["was"] = f.was;
    if (!f.now.empty()) out["now"] = f.now;
    if (f.other_engine) out["other evaluator"] = true;
    if (f.other_vocabulary) out["other vocabulary"] = true;
    return out;
}

nlohmann::json json_of(const Seal &seal) {
    return {{"entries", seal.entries},
            {"head", seal.head},
            {"at", seal.stamp.at},
            {"who", seal.stamp.who},
            {"public key", seal.public_key}};
}

const char *id_of(CheckedSeal::State state) {
    using State = CheckedSeal::State;
    switch (state) {
    case State::holds: return "holds";
    case State::altered: return "altered";
    case State::other_signer: return "other signer";
    case State::not_on_record: break;
    }
    return "not on record";
}

nlohmann::json json_of(const CheckedSeal &checked) {
    nlohmann::json out = json_of(checked.seal);
    out["state"] = id_of(checked.state);
    out["signer named"] = checked.signer_named;
    out["entries after"] = checked.entries_after;
    return out;
}

} // namespace

std::string json_text(const Verified &v, const std::vector<std::string> &notes) {
    nlohmann::json out{{"holds", v.holds()},
                       {"entries", v.chain.entries},
                       {"head", v.chain.head},
                       {"faults", faults_of(v)},
                       {"verdicts judged again", v.replay ? v.replay->verdicts : 0},
                       {"ranges worked out again", v.replay ? v.replay->ranges : 0}};
    if (v.replay) {
        out["not the same"] = nlohmann::json::array();
        for (const auto &fault : v.replay->faults) out["not the same"].push_back(json_of(fault));
    }
    if (!v.false_lines.empty()) out["false in lists"] = v.false_lines;
    if (!v.other_head.empty()) out["head given"] = v.other_head;
    if (!v.chain.set_back.empty()) out["clock set back at"] = v.chain.set_back;
    if (v.seal) out["seal"] = json_of(*v.seal);
    if (v.entries_after) out["entries after the head given"] = *v.entries_after;
    return render::finished(std::move(out), notes);
}

std::string json_text(const Refreshed &done, const std::vector<std::string> &notes) {
    nlohmann::json out{{"refreshed", done.coupons}};
    if (!done.were_false.empty()) out["were false in lists"] = done.were_false;
    return render::finished(std::move(out), notes);
}

std::string json_text(const SealWritten &done, const std::vector<std::string> &notes) {
    nlohmann::json out = json_of(done.seal);
    out["written to"] = done.path;
    return render::finished(std::move(out), notes);
}

std::string json_text(const VerifiedShops &all, const std::vector<std::string> &notes) {
    nlohmann::json out{{"holds", all.holds()}, {"shops", nlohmann::json::array()}};
    for (const auto &[shop, verified] : all.shops)
        out["shops"].push_back({{"shop", shop},
                                {"holds", verified.holds()},
                                {"entries", verified.chain.entries},
                                {"head", verified.chain.head},
                                {"faults", faults_of(verified)}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const JoinedShops &done, const std::vector<std::string> &notes) {
    nlohmann::json out{{"folder", done.folder}, {"shops", nlohmann::json::array()}};
    for (const auto &one : done.shops)
        out["shops"].push_back({{"shop", one.shop},
                                {"record", one.path},
                                {"coupons", one.coupons},
                                {"entries", one.copy.entries},
                                {"head", one.copy.head}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const BackedUp &done, const std::vector<std::string> &notes) {
    return render::finished({{"backup", done.path}, {"entries", done.copy.entries}, {"head", done.copy.head}},
                            notes);
}

std::string json_text(const Written &done, const std::vector<std::string> &notes) {
    return render::finished({{"written to", done.path}, {"coupons", done.coupons}}, notes);
}

std::string json_text(const Imported &done, const std::vector<std::string> &notes) {
    nlohmann::json out{{"coupons", done.coupons}, {"exams", done.exams}, {"indications", done.indications}};
    if (done.photos > 0) out["photos"] = done.photos;
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
