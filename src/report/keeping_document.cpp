#include "report/keeping_document.hpp"

#include "measure/text.hpp"

namespace beadbook {
namespace {

using What = ReplayFault::What;

std::string subject_of(const ReplayFault &f) {
    if (f.family == Family::welder)
        return f.number > 0 ? "qualification " + std::to_string(f.number) + " of welder " + f.subject
                            : "welder " + f.subject;
    if (f.family != Family::coupon) return std::string(name_of(f.family)) + " " + f.subject;
    return f.entry > 0 ? "verdict in entry " + std::to_string(f.entry) + " (coupon " + f.subject + ")"
                       : "coupon " + f.subject;
}

std::string what_of(const ReplayFault &f) {
    const std::string basis = f.family == Family::welder ? "its rules" : "its criteria";
    switch (f.what) {
    case What::unreadable: return "cannot be read: " + f.was;
    case What::unknown_form: return "was stored by a newer program; this one cannot take it again";
    case What::text_missing: return basis + " are missing";
    case What::text_broken: return basis + " no longer load";
    case What::head: return "what it says of itself or its criteria is not what they are";
    case What::range: return "its range comes out otherwise now";
    case What::findings:
        return "class " + f.part + " is '" + f.now + "' as it was, but for other reasons or by other numbers";
    case What::verdict: break;
    }
    if (f.was.empty()) return "class " + f.part + " was not judged and is now '" + f.now + "'";
    if (f.now.empty()) return "class " + f.part + " was '" + f.was + "' and is no class of its criteria";
    return "class " + f.part + " was '" + f.was + "' and is now '" + f.now + "'";
}

std::string judged_by_other(const ReplayFault &f) {
    std::vector<std::string> others;
    if (f.other_engine) others.emplace_back("another version of the evaluator");
    if (f.other_vocabulary) others.emplace_back("another list of imperfections");
    return others.empty() ? "" : "; it was taken by " + listed(others);
}

std::string fault_of(const CheckedSeal &checked) {
    using State = CheckedSeal::State;
    const Seal &seal = checked.seal;
    switch (checked.state) {
    case State::altered:
        return "the seal was changed after it was signed: its signature is not of what stands in it";
    case State::other_signer:
        return "the seal is signed by the key " + seal.public_key + ", which is not the one you trust";
    case State::not_on_record:
        return "the seal of " + seal.stamp.at + " holds " +
               counted(static_cast<std::size_t>(seal.entries), "entry", "entries") + " up to " + seal.head +
               ", and the record has no such entry there: it was cut off or written anew since";
    case State::holds: break;
    }
    return "";
}

std::string first_of(std::vector<std::string> marks) {
    constexpr std::size_t most = 20;
    if (marks.size() > most) {
        const std::size_t more = marks.size() - most;
        marks.resize(most);
        marks.push_back(std::to_string(more) + " more");
    }
    return listed(marks);
}

} // namespace

std::string sentence(const ReplayFault &f) { return subject_of(f) + ": " + what_of(f) + judged_by_other(f); }

std::vector<std::string> faults_of(const Verified &v) {
    std::vector<std::string> out = v.chain.faults;
    for (const auto &coupon : v.false_lines) out.push_back(line_does_not_follow(coupon));
    if (v.replay)
        for (const auto &fault : v.replay->faults) out.push_back(sentence(fault));
    if (v.seal)
        if (std::string fault = fault_of(*v.seal); !fault.empty()) out.push_back(std::move(fault));
    if (!v.other_head.empty())
        out.push_back("the record ends with " + v.chain.head +
                      ", not with the hash you gave: entries were cut off or added since");
    return out;
}

namespace {

std::string held(std::int64_t entries, const std::string &head) {
    return counted(static_cast<std::size_t>(entries), "entry holds", "entries hold") + ". Head: " + head;
}

} // namespace

Document document_of(const Verified &v) {
    Document doc;
    doc.title = "Verification";
    for (const auto &fault : faults_of(v)) doc.item(fault);
    if (!v.chain.faults.empty()) return doc;
    doc.line(held(v.chain.entries, v.chain.head));
    if (const auto &back = v.chain.set_back; !back.empty())
        doc.line(Words("A clock was set back: " + counted(back.size(), "entry says", "entries say") +
                           " an earlier time than one before, first entry " + std::to_string(back.front()),
                       Tone::cannot_say));
    if (v.replay)
        doc.line(counted(static_cast<std::size_t>(v.replay->verdicts), "verdict") + " judged again and " +
                 counted(static_cast<std::size_t>(v.replay->ranges), "range") + " worked out again, " +
                 (v.replay->faults.empty() ? "all the same" : "not all the same"));
    if (v.seal && v.seal->state == CheckedSeal::State::holds)
        doc.line("The seal of " + v.seal->seal.stamp.at + " by " + v.seal->seal.stamp.who +
                 " holds, signed by the key " + v.seal->seal.public_key);
    return doc.line(
        "Note the number and the head elsewhere: the head, given later, also proves that nothing was cut "
        "off.");
}

std::vector<std::string> faults_of(const VerifiedShops &all) {
    std::vector<std::string> out;
    for (const auto &one : all.shops)
        for (const auto &fault : faults_of(one.verified)) out.push_back(one.shop + ": " + fault);
    return out;
}

Document document_of(const VerifiedShops &all) {
    Document doc;
    doc.title = "Verification";
    for (const auto &fault : faults_of(all)) doc.item(fault);
    for (const auto &[shop, verified] : all.shops)
        if (verified.chain.faults.empty())
            doc.line(shop + ": " + held(verified.chain.entries, verified.chain.head));
    return doc;
}

Document document_of(const JoinedShops &done) {
    Document doc;
    for (const auto &one : done.shops)
        doc.line(one.shop + ": " + counted(one.coupons, "coupon") + ", " +
                 held(one.copy.entries, one.copy.head));
    return doc.line("joined in " + done.folder +
                    ", to be read as SHOP.MARK by coupons, summary and export; nothing is "
                    "entered there");
}

Document document_of(const Refreshed &done) {
    Document doc;
    doc.line("what lists say of " + counted(done.coupons, "coupon") + " is worked out again");
    if (!done.were_false.empty())
        doc.line(Words("What they said of " + first_of(done.were_false) +
                           " did not follow from what is on record: entries about " +
                           (done.were_false.size() == 1 ? "it" : "them") + std::string(perhaps_cut_off) + ".",
                       Tone::cannot_say));
    return doc;
}

Document document_of(const BackedUp &done) {
    return Document{}.line("backup written to " + done.path + ", and its chain of entries verified");
}

Document document_of(const SealWritten &done) {
    Document doc;
    doc.line("sealed: " + counted(static_cast<std::size_t>(done.seal.entries), "entry", "entries") +
             " up to " + done.seal.head);
    doc.line("The seal is in " + done.path + "; keep it where the record is not.");
    return doc.line("Who checks it must know from elsewhere that this is the shop's key: " +
                    done.seal.public_key);
}

Document document_of(const Written &done) { return Document{}.line("written to " + done.path); }

Document document_of(const Imported &done) {
    if (!done.sheet) return Document{}.line(counted(done.coupons, "coupon") + " imported");
    const std::size_t rows = done.coupons + done.exams + done.indications;
    return Document{}.line(counted(rows, "row") + " imported");
}

std::vector<std::string> with_left_out(const ExportCount &exported, std::vector<std::string> out) {
    if (exported.photos > 0)
        out.push_back(
            counted(exported.photos, "photo is", "photos are") +
            " named by hash; the pictures themselves are not in it ('photos' and 'backup' have them)");
    if (!exported.withdrawn.empty())
        out.push_back(counted(exported.withdrawn.size(), "withdrawn coupon is", "withdrawn coupons are") +
                      " left out: " + first_of(exported.withdrawn));
    if (!exported.failed.empty())
        out.push_back(counted(exported.failed.size(), "coupon that failed does", "coupons that failed do") +
                      " not go along; those of the same welder tell of " +
                      (exported.failed.size() == 1 ? "it: " : "them: ") + first_of(exported.failed));
    if (!exported.revoked.empty())
        out.push_back(counted(exported.revoked.size(), "revocation stays", "revocations stay") +
                      " with the record, and nothing that is exported tells of " +
                      (exported.revoked.size() == 1 ? "it: " : "them: ") + first_of(exported.revoked));
    return out;
}

} // namespace beadbook
