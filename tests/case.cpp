#include "case.hpp"

#include "measure/text.hpp"

#include <map>
#include <regex>
#include <stdexcept>

namespace beadbook::test {

namespace {

/// Cases write distances. On a weld that closes on itself a bare `at 6` might be an hour, so the unit is
/// added.
std::string with_units(const std::string &line, bool closed, Unit unit) {
    static const std::regex bare(R"re(\b(at|mid|from|to) (\d+)(?=$| (?!in|mm|o'clock|deg)))re");
    return closed ? std::regex_replace(line, bare, "$1 $2 " + std::string(name_of(unit))) : line;
}

} // namespace

std::string JudgedCase::verdicts() const {
    std::string out;
    for (std::size_t c = 0; c < judgement.classes.size(); ++c)
        out += (c > 0 ? ", " : "") + set->classes[c].id + " " +
               std::string(name_of(judgement.classes[c].verdict));
    return out;
}

std::string JudgedCase::sentences(const std::string &class_id) const {
    const std::size_t c = set->class_index(class_id).value();
    std::string out;
    for (const auto &f : judgement.classes[c].findings) out += sentence(view(), c, f) + "\n";
    return out;
}

std::string verdicts_before(int first, const JudgedCase &c) {
    JudgedCase out = c;
    out.judgement = judge(*c.set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), first - 1);
    return out.verdicts();
}

CouponRecord coupon_from(const std::string &fields, Unit unit) {
    CouponRecord out;
    out.id = "test";
    out.set("units", std::string(name_of(unit)));
    for (const auto word : words_of(fields)) {
        const std::size_t equals = word.find('=');
        if (equals == std::string_view::npos) throw std::logic_error("test coupon: " + std::string(word));
        out.set(std::string(word.substr(0, equals)), std::string(word.substr(equals + 1)));
    }
    return out;
}

JudgedCase judged(std::shared_ptr<const CriteriaSet> set, const CaseText &text) {
    JudgedCase out;
    out.set = std::move(set);
    out.coupon = coupon_from(text.coupon, out.set->unit).facts();
    for (const auto word : words_of(text.exams)) out.exams.push_back({*exam_named(word), true, ""});
    int number = 0;
    for (const auto &line : text.log) {
        const auto method = exam_named(line.substr(0, 2)).value();
        const std::string written = with_units(line.substr(3), out.coupon.line.closed, out.set->unit);
        IndicationRecord i = parse_log_line(written, out.coupon.line, out.set->unit);
        i.number = ++number;
        out.indications.push_back(i.facts(method, out.coupon.line));
    }
    out.judgement = judge(*out.set, out.coupon, out.exams, out.indications);
    return out;
}

JudgedCase judged(const std::string &shipped, const CaseText &text) {
    static std::map<std::string, std::shared_ptr<const CriteriaSet>> sets;
    auto &set = sets[shipped];
    if (!set) set = shipped_criteria(shipped);
    return judged(set, text);
}

std::shared_ptr<const CriteriaSet> set_from(const std::string &yaml) {
    const Loaded loaded = load_criteria(yaml);
    std::string all;
    for (const auto &issue : loaded.issues) all += print(issue, "test.yaml", yaml);
    if (!loaded.set) throw std::logic_error(all);
    return loaded.set;
}

std::string head() {
    return "set: test\ntitle: Test\nedition: test\nunits: in\nclasses: [A, B]\nquantities: {T: thinner "
           "member, L: weld length}\n";
}

} // namespace beadbook::test
