#include "facts/person_record.hpp"

#include "facts/coupon_record.hpp"
#include "facts/exam_standing.hpp"
#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>
#include <tuple>

namespace beadbook {
namespace {

DataError bad_certificate(const std::string &text, const std::string &why) {
    return DataError("certificate '" + shown(text) + "': " + why +
                     "; write it as \"MT II until 2027-05-01 number 4711 scheme SNT-TC-1A\"");
}

Day day_after(std::string_view word, const std::string &what) {
    try {
        return parse_day(word);
    } catch (const InputError &e) {
        throw DataError(what + ": " + e.what());
    }
}

constexpr std::pair<const char *, const char *> objections[] = {
    {"certificate-none", "the record of the examiner holds no certificate for the method"},
    {"certificate-over", "the examiner's certificate was over on the day of the exam"},
    {"certificate-later", "the examiner's certificate began after the day of the exam"},
    {"certificate-level", "the examiner's level on record does not judge alone (common practice, no source)"},
    {"vision-over", "the examiner's last vision test on record was more than a year before the exam (common "
                    "practice, no source)"},
    {"looks-like-welder", "the examiner is written so that nobody can tell him from who welded the coupon "
                          "(common practice, no source)"},
    {"welded-it",
     "by the record that the exam comes from its examiner welded this coupon (common practice, no "
     "source)"}};

} // namespace

const std::vector<std::string> &person_roles() {
    static const std::vector<std::string> all{"technician", "instructor", "welder", "keeper"};
    return all;
}

Certificate read_certificate(const std::string &given) {
    const std::string text = checked_text(given, "certificate");
    const auto words = words_of(text);
    if (words.size() < 2) throw bad_certificate(text, "a method and a level come first");
    Certificate out;
    const auto method = exam_named(words[0]);
    if (!method)
        throw bad_certificate(text, "'" + shown(words[0]) + "' is no method; expected " + exam_names_text());
    out.method = *method;
    out.level = std::string(words[1]);
    const auto &levels = condition_info("level")->words;
    if (std::find(levels.begin(), levels.end(), out.level) == levels.end())
        throw bad_certificate(text,
                              "'" + shown(words[1]) + "' is no level; expected " + listed(levels, "or"));
    static const std::vector<std::string> keys{"since", "until", "number", "scheme"};
    std::string key;
    for (std::size_t i = 2; i < words.size(); ++i) {
        const std::string word(words[i]);
        if (std::find(keys.begin(), keys.end(), word) != keys.end()) {
            key = word;
            if (i + 1 == words.size()) throw bad_certificate(text, "nothing stands behind '" + key + "'");
        } else if (key == "since" || key == "until") {
            auto &day = key == "since" ? out.since : out.until;
            if (day) throw bad_certificate(text, "'" + shown(word) + "' stands behind the day");
            day = day_after(word, "certificate, " + key);
        } else if (key.empty()) {
            throw bad_certificate(text, "'" + shown(word) + "'; expected " + listed(keys, "or") +
                                            did_you_mean(word, keys));
        } else {
            std::string &value = key == "number" ? out.number : out.scheme;
            value += (value.empty() ? "" : " ") + word;
        }
    }
    if (out.since && out.until && *out.until < *out.since)
        throw bad_certificate(text, "it would end before it begins");
    return out;
}

std::string name_of(const Certificate &c) {
    return std::string(name_of(c.method)) + " " + c.level + (c.number.empty() ? "" : " " + c.number);
}

std::string print(const Certificate &c) {
    return std::string(name_of(c.method)) + " " + c.level + (c.since ? " since " + print(*c.since) : "") +
           (c.until ? " until " + print(*c.until) : "") + (c.number.empty() ? "" : " number " + c.number) +
           (c.scheme.empty() ? "" : " scheme " + c.scheme);
}

VisionTest read_vision_test(const std::string &given) {
    const std::string text = checked_text(given, "vision");
    const auto words = words_of(text);
    if (words.empty() || words.size() > 2)
        throw DataError("vision: '" + shown(text) +
                        "'; write the day of the test, and the letters if they are "
                        "known: \"2026-03-01 J1\"");
    VisionTest out{day_after(words[0], "vision"), words.size() > 1 ? std::string(words[1]) : ""};
    const auto &letters = condition_info("vision test")->words;
    if (!out.letters.empty() && std::find(letters.begin(), letters.end(), out.letters) == letters.end())
        throw DataError("vision: '" + shown(out.letters) + "'; expected " + listed(letters, "or"));
    return out;
}

std::string print(const VisionTest &test) {
    return print(test.on) + (test.letters.empty() ? "" : " " + test.letters);
}

const VisionTest *PersonRecord::vision_on(Day day) const {
    const VisionTest *out = nullptr;
    for (const auto &one : vision)
        if (one.on <= day && (!out || out->on <= one.on)) out = &one;
    return out;
}

Entitlement entitlement(const PersonRecord &person, Exam method, Day day) {
    // In force before over, over before to come; then the higher level, then what lasts longer.
    const auto standing = [&](const Certificate &c) {
        const int when = c.in_force(day) ? 2 : c.until && *c.until < day ? 1 : 0;
        return std::tuple(when, rank_of_level(c.level), c.until.value_or(Day::max()));
    };
    Entitlement out;
    for (const auto &one : person.certificates)
        if (one.method == method && (!out.certificate || standing(*out.certificate) < standing(one)))
            out.certificate = &one;
    if (!out.certificate)
        out.objection = "certificate-none";
    else if (!out.certificate->in_force(day))
        out.objection =
            std::get<0>(standing(*out.certificate)) == 1 ? "certificate-over" : "certificate-later";
    else if (!may_judge_alone(method, out.certificate->level).value_or(false))
        out.objection = "certificate-level";
    return out;
}

std::string why_not_entitled(const std::string &id) {
    for (const auto &[known, why] : objections)
        if (id == known) return why;
    return "";
}

} // namespace beadbook
