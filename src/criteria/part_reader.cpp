// The parts of a set other than its rules: standing, relevance, merging, exams, gaps.
#include "criteria/part_reader.hpp"

#include "criteria/band.hpp"
#include "criteria/doubts.hpp"
#include "language/condition_parser.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

std::vector<Exam> exams_in(const Fields &fields, std::string_view key) {
    std::vector<Exam> out;
    for (const Yaml *word : fields.words(key)) {
        if (const auto exam = exam_named(word->text))
            out.push_back(*exam);
        else
            fields.error(key, "'" + shown(word->text) + "' is no exam; expected " + exam_names_text());
    }
    return out;
}

/// That the set has no such class, at its place.
void refuse_class(ReadContext &context, const std::string &word, Where where, const std::string &path) {
    const auto ids = context.set.class_names();
    if (ids.empty() || context.class_twice) return; // their list was told of
    context.issues.error(where, path,
                         "there is no class '" + shown(word) + "'; expected " + listed(ids, "or") +
                             did_you_mean(word, ids));
}

} // namespace

void refuse_scopes(const std::vector<Condition> &conditions, std::initializer_list<Scope> scopes,
                   bool attributes, const Fields &fields, std::string_view key) {
    for (const auto &c : conditions) {
        bool wrong = attributes && c.kind == Condition::Kind::word && c.slot >= fact_count;
        for (const Scope scope : scopes) {
            wrong = wrong || uses_scope(c.left, scope);
            for (const auto &edge : c.edges) wrong = wrong || uses_scope(edge.right, scope);
        }
        refuse_blanks(c, fields, key);
        if (wrong)
            fields.error(
                key,
                "'" + shown(c.text) + "' speaks of something that is not known here" +
                    (key == "when" ? "; 'when' is about the coupon, 'where' about each indication" : ""));
    }
}

void refuse_blanks(const Condition &c, const Fields &fields, std::string_view key) {
    bool blank = c.left.has_blanks();
    for (const auto &edge : c.edges) blank = blank || edge.right.has_blanks();
    if (blank) fields.error(key, "'" + shown(c.text) + "' speaks of a blank; only limits and windows may");
}

Unit read_unit(const Fields &top) {
    const std::string unit = top.needed_text("units");
    if (unit != "mm" && unit != "in" && !unit.empty())
        top.error("units", "found '" + shown(unit) + "'; expected in or mm");
    return unit == "mm" ? Unit::millimetre : Unit::inch;
}

void check_class_keys(const Yaml &map, const std::string &path, ReadContext &context) {
    const auto ids = context.set.class_names();
    std::size_t strays = map.doubled; // each may stand there for one that is missing
    for (const auto &entry : map.entries)
        if (std::find(ids.begin(), ids.end(), entry.key) == ids.end()) {
            refuse_class(context, entry.key, entry.key_where, path);
            ++strays;
        }
    std::vector<std::string> missing;
    std::copy_if(ids.begin(), ids.end(), std::back_inserter(missing),
                 [&](const std::string &id) { return !map.find(id); });
    if (missing.size() <= strays) return;
    for (const auto &id : missing)
        context.issues.error(map.where, path,
                             "class '" + id + "' is missing; if the standard is silent, write 'not said'");
}

std::vector<bool> read_class_list(const Fields &fields, ReadContext &context) {
    std::vector<bool> out(context.set.classes.size(), !fields.get("classes"));
    for (const Yaml *word : fields.words("classes")) {
        if (const auto index = context.set.class_index(word->text))
            out[*index] = true;
        else
            refuse_class(context, word->text, word->where, fields.path_of("classes"));
    }
    return out;
}

Standing read_standing(const Fields &fields, Issues &issues) {
    const Yaml *node = fields.need("standing");
    return node ? read_standing(*node, fields.path_of("standing"), issues) : Standing{};
}

Standing read_standing(const Yaml &node, const std::string &path, Issues &issues) {
    const std::vector<std::string> kinds{"read", "second hand", "memory", "house", "common practice"};
    Standing out;
    const Fields one(node, path, kinds, issues);
    if (node.entries.size() != 1) {
        if (node.kind == Yaml::Kind::map)
            issues.error(node.where, path, "expected exactly one of " + listed(kinds, "or"));
        return out;
    }
    const auto found = std::find(kinds.begin(), kinds.end(), node.entries.front().key);
    if (found != kinds.end()) out.kind = static_cast<Standing::Kind>(found - kinds.begin());
    out.source = one.text(node.entries.front().key);
    if (trimmed(out.source).empty()) issues.late_error(node.where, path, "the source is empty");
    return out;
}

std::vector<Standing> read_standings(const Fields &fields, ReadContext &context) {
    std::vector<Standing> out(context.set.classes.size(), read_standing(fields, context.issues));
    const Yaml *map = fields.get("standing of");
    if (!map) return out;
    for (const auto &entry : map->entries) {
        if (const auto index = context.set.class_index(entry.key))
            out[*index] = read_standing(entry.value, fields.path_of("standing of"), context.issues);
        else
            refuse_class(context, entry.key, entry.key_where, fields.path_of("standing of"));
    }
    return out;
}

/// "; it could be incomplete fusion or overlap: write which", of a word that is used for several.
static std::string types_meant(const std::string &word, const Vocabulary &vocabulary) {
    std::vector<std::string> names;
    for (const TypeId type : vocabulary.perhaps(word)) names.push_back(vocabulary[type].name);
    return names.empty() ? did_you_mean(word, vocabulary.names())
                         : "; it could be " + listed(names, "or") + ": write which";
}

Subject read_subject(const Fields &fields, ReadContext &context, ExamsKey key_exams) {
    Subject out;
    const auto closure = [&](std::string_view key, bool value, bool &known) {
        for (const Yaml *word : fields.words(key)) {
            const auto type = word->text == "any" ? std::nullopt : context.vocabulary.find(word->text);
            known = known && (type || word->text == "any");
            bool takes_out = false;
            if (!type && word->text != "any")
                context.issues.error(word->where, fields.path_of(key),
                                     "'" + shown(word->text) + "' is no type of imperfection" +
                                         types_meant(word->text, context.vocabulary));
            for (std::size_t t = 0; t < context.vocabulary.size(); ++t) {
                const auto id = static_cast<TypeId>(t);
                const bool hit = type ? context.vocabulary.is_a(id, *type)
                                      : word->text == "any" && !context.vocabulary[id].measured;
                takes_out = takes_out || (hit && out.types[t]);
                if (hit) out.types[t] = value;
            }
            if (type && !value && !takes_out)
                context.issues.error(word->where, fields.path_of(key),
                                     "'" + shown(word->text) +
                                         "' is none of 'types', so this takes nothing out");
        }
    };
    fields.need("types");
    bool known = true;
    closure("types", true, known);
    closure("except", false, known);
    if (out.types.none() && fields.get("types") && known) fields.error("types", "this leaves no type");
    const auto exams = exams_in(fields, "exams");
    for (const Exam exam : exams) out.exams.set(static_cast<std::size_t>(exam));
    if (fields.get("exams")) return out;
    // What is silent on the methods would judge by one that its author never thought of.
    if (key_exams == ExamsKey::needed)
        fields.error("exams", "'exams' is missing; list the methods that it speaks of: " + exam_names_text());
    out.exams.set();
    return out;
}

Relevance read_relevance(const Yaml &node, ReadContext &context) {
    static const std::vector<std::string> keys{"id",      "types",  "except", "exams",
                                               "classes", "ignore", "clause", "standing"};
    const Fields fields(node, "relevance", keys, context.issues);
    Relevance out;
    out.id = fields.needed_text("id");
    out.clause = fields.needed_text("clause");
    out.standing = read_standing(fields, context.issues);
    out.subject = read_subject(fields, context, ExamsKey::needed);
    for (std::size_t t = 0; t < context.vocabulary.size(); ++t)
        out.groups[t] = out.subject.types[t] && context.vocabulary[static_cast<TypeId>(t)].is_group();
    for (const Yaml *word : fields.words("types"))
        if (const auto named = context.vocabulary.find(word->text)) out.groups.reset(*named);
    out.classes = read_class_list(fields, context);
    fields.need("ignore");
    out.ignore = read_conditions(fields, "ignore", context.names, context.issues);
    refuse_scopes(out.ignore, {Scope::pair, Scope::group}, false, fields, "ignore");
    for (const auto &c : out.ignore) {
        // It counts neighbours that are relevant, so it cannot decide which those are.
        if (uses_way_to_nearest(c))
            fields.error("ignore", "the nearest gap is known only once it is settled what counts");
    }
    out.where_from = node.where;
    for (const auto &c : out.ignore) out.text += (out.text.empty() ? "" : " and ") + c.text;
    return out;
}

Merge read_merge(const Yaml &node, ReadContext &context) {
    static const std::vector<std::string> keys{"id",   "types",  "except",   "exams",
                                               "when", "clause", "standing", "reading"};
    const Fields fields(node, "merge", keys, context.issues);
    Merge out;
    out.id = fields.needed_text("id");
    out.clause = fields.needed_text("clause");
    out.reading = fields.text("reading");
    out.standing = read_standing(fields, context.issues);
    out.subject = read_subject(fields, context, ExamsKey::needed);
    if (const Yaml *when = fields.need("when"))
        if (auto c = read_condition(*when, "merge.when", context.names, context.issues)) {
            const bool upper = c->edges.size() == 1 && is_maximum(c->edges[0].compare);
            if (!upper || c->left.text.empty() ||
                quantities_of(c->left) != std::vector<Quantity>{Quantity::gap})
                fields.error("when", "expected 'gap under ...' or 'gap at most ...'");
            refuse_scopes({*c}, {Scope::indication, Scope::group}, true, fields, "merge.when");
            out.when = std::move(*c);
        }
    out.where_from = node.where;
    return out;
}

RequiredExam read_required_exam(const Yaml &node, ReadContext &context) {
    static const std::vector<std::string> keys{"id", "one of", "classes", "when", "clause", "standing"};
    const Fields fields(node, "required exams", keys, context.issues);
    RequiredExam out;
    out.id = fields.needed_text("id");
    out.clause = fields.needed_text("clause");
    out.standing = read_standing(fields, context.issues);
    fields.need("one of");
    out.one_of = exams_in(fields, "one of");
    out.when = read_conditions(fields, "when", context.names, context.issues);
    refuse_scopes(out.when, {Scope::indication, Scope::pair, Scope::group}, true, fields, "when");
    out.classes = read_class_list(fields, context);
    out.where_from = node.where;
    return out;
}

ScopePart read_scope_part(const Yaml &node, ReadContext &context) {
    const Fields fields(node, "scope", {"id", "title", "if", "when", "clause", "standing"}, context.issues);
    ScopePart out;
    out.id = fields.needed_text("id");
    out.title = fields.text("title");
    out.clause = fields.needed_text("clause");
    out.standing = read_standing(fields, context.issues);
    fields.need("when");
    out.only_if = read_conditions(fields, "if", context.names, context.issues);
    out.when = read_conditions(fields, "when", context.names, context.issues);
    refuse_scopes(out.only_if, {Scope::indication, Scope::pair, Scope::group}, true, fields, "if");
    refuse_scopes(out.when, {Scope::indication, Scope::pair, Scope::group}, true, fields, "when");
    for (const auto &c : out.when) out.text += (out.text.empty() ? "" : " and ") + c.text;
    return out;
}

Silence read_silence(const Yaml &node, ReadContext &context) {
    const Fields fields(node, "silence", {"check", "of", "reason"}, context.issues);
    Silence out{fields.needed_text("check"), fields.needed_text("of"), fields.needed_text("reason"),
                node.where};
    const auto &known = check_names();
    if (!out.check.empty() && std::find(known.begin(), known.end(), out.check) == known.end())
        fields.error("check", "'" + shown(out.check) + "' is no check that can be silenced; expected " +
                                  listed(known, "or") + did_you_mean(out.check, known));
    return out;
}

Gap read_gap(const Yaml &node, ReadContext &context) {
    static const std::vector<std::string> keys{"text",    "types", "except", "exams",
                                               "classes", "when",  "where",  "shape"};
    const Fields fields(node, "gaps", keys, context.issues);
    Gap out;
    out.text = fields.needed_text("text");
    if (fields.get("types")) out.subject = read_subject(fields, context, ExamsKey::all_if_absent);
    out.where = read_conditions(fields, "where", context.names, context.issues);
    refuse_scopes(out.where, {Scope::pair, Scope::group}, false, fields, "where");
    out.when = read_conditions(fields, "when", context.names, context.issues);
    refuse_scopes(out.when, {Scope::indication, Scope::pair, Scope::group}, true, fields, "when");
    out.shape = read_shape(fields);
    out.classes = read_class_list(fields, context);
    for (const char *key : {"when", "where", "shape", "classes"}) {
        if (!fields.get(key)) continue;
        out.beside_rules = true;
        if (!out.subject) fields.error(key, "say of which 'types'");
    }
    out.where_from = node.where;
    return out;
}

bool read_as_rectangles(const Fields &fields, const Rule &rule) {
    const std::string how = fields.text("area");
    if (how.empty()) return false;
    if (how != "rectangle")
        fields.error("area", "found '" + shown(how) + "'; expected rectangle");
    else if (rule.kind != Rule::Kind::sum || rule.summed != Quantity::area)
        fields.error("area", "only a sum of area says how areas are taken");
    return true;
}

void read_blank(const Yaml &node, ReadContext &context) {
    static const std::vector<std::string> keys{"id", "limits", "kind", "clause", "plausible"};
    constexpr std::array kinds{Blank::Kind::length, Blank::Kind::area, Blank::Kind::angle, Blank::Kind::count,
                               Blank::Kind::number};
    const Fields fields(node, "blanks", keys, context.issues);
    Blank out;
    out.where = node.where;
    out.id = fields.needed_text("id");
    out.limits = fields.needed_text("limits");
    out.clause = fields.needed_text("clause");
    const std::string kind = fields.needed_text("kind");
    std::vector<std::string> names;
    for (const auto one : kinds) names.emplace_back(name_of(one));
    const auto found = std::find(names.begin(), names.end(), kind);
    if (found != names.end())
        out.kind = kinds[static_cast<std::size_t>(found - names.begin())];
    else if (!kind.empty())
        fields.error("kind", "found '" + shown(kind) + "'; expected " + listed(names, "or") +
                                 did_you_mean(kind, names));
    if (const Yaml *band = fields.get("plausible"); band && found != names.end()) {
        out.plausible_text = fields.text("plausible");
        try {
            out.plausible = parse_band(out.plausible_text, context.names, out.dimension());
            Band within;
            for (const auto &edge : out.plausible) within.narrow(edge.compare, edge.value);
            if (within.empty())
                context.issues.error(band->where, fields.path_of("plausible"),
                                     "'" + out.plausible_text + "' holds no number");
        } catch (const InputError &e) {
            context.issues.error(inside(*band, e.column), fields.path_of("plausible"), e.what());
        }
    }
    if (out.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") != std::string::npos)
        fields.error("id", "'" + shown(out.id) + "': a blank is named by small letters, digits and dashes");
    constexpr std::size_t most = 64;
    auto &all = context.set.blanks;
    if (all.size() >= most) return fields.error("id", "more than 64 blanks");
    out.classes.resize(context.set.classes.size());
    if (!context.names.blanks
             .emplace(out.id, Names::BlankName{static_cast<Slot>(all.size()), out.dimension()})
             .second)
        fields.error("id", "a blank above has the same id");
    all.push_back(std::move(out));
}

void note_blanks(Rule &rule, CriteriaSet &set) {
    for (std::size_t c = 0; c < rule.limits.size(); ++c)
        for (const Slot one : set.blanks_of(rule, c)) {
            set.blanks[one].classes[c] = true;
            rule.standings[c].kind = Standing::Kind::blank;
        }
}

} // namespace beadbook
