#include "criteria/extend.hpp"

#include "criteria/files_above.hpp"
#include "criteria/put_over.hpp"
#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

constexpr std::string_view mark = "--- # base ";

using Texts = std::map<std::string, std::string>;

/// The file itself, and the bases that were put below it.
std::string unpacked(const std::string &text, Texts &bases) {
    std::string own;
    std::string *to = &own;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view line = std::string_view(text).substr(at, end - at);
        if (line.starts_with(mark))
            to = &bases[std::string(line.substr(mark.size()))];
        else
            to->append(text, at, end + 1 - at);
        at = end + 1;
    }
    return own;
}

void move_to(Yaml &node, Where where) {
    node.where = where;
    for (auto &item : node.items) move_to(item, where);
    for (auto &entry : node.entries) {
        entry.key_where = where;
        move_to(entry.value, where);
    }
}

class Reader {
public:
    explicit Reader(const BaseText &base) : base_(base) {}

    Extended read(const std::string &text, Issues &issues) {
        Extended out;
        const std::string own = unpacked(text, packed_);
        out.root = read_yaml(own, issues);
        out.text = own.ends_with('\n') ? own : own + "\n";
        names_.push_back(text_under(out.root, "set"));
        under(out, issues);
        if (out.base.empty()) out.text = text;
        for (std::size_t n = 0; n < names_below_.size(); ++n) {
            const std::string &below = used_.at(names_below_[n]);
            out.text += std::string(mark) + names_below_[n] + "\n" + below;
            out.base_text += n == 0 ? below : std::string(mark) + names_below_[n] + "\n" + below;
        }
        return out;
    }

private:
    /// Puts the base under it, which may have one itself.
    void under(Extended &out, Issues &issues) {
        const Yaml *extends = out.root.find("extends");
        if (!extends) {
            for (const char *key : {"inherited", "cited as", "without", "changes"})
                if (const Yaml *node = out.root.find(key))
                    issues.error(node->where, key, "there is no 'extends' that it could speak of");
            return;
        }
        const std::string name = extends->text;
        const auto fail = [&](const std::string &why) {
            issues.error(extends->where, "extends", why);
            out.root.entries.clear(); // without its base nothing else can be said of it
        };
        if (extends->kind != Yaml::Kind::scalar) return fail("expected the name of one set");
        if (std::find(names_.begin(), names_.end(), name) != names_.end())
            return fail("'" + shown(name) + "' would extend itself");
        const auto packed = packed_.find(name);
        const auto text = packed != packed_.end() ? packed->second : base_(name);
        if (!text)
            return fail("there is no set '" + shown(name) +
                        "'; expected a shipped one or a file beside this one" +
                        did_you_mean(name, shipped_sets()));
        names_.push_back(name);
        Extended below;
        Issues of_base;
        const std::string own = unpacked(*text, packed_);
        names_below_.push_back(name);
        used_[name] = own.ends_with('\n') ? own : own + "\n";
        below.root = read_yaml(own, of_base);
        under(below, of_base);
        for (const auto &issue : of_base.all()) {
            if (issue.severity != Severity::error) continue;
            const std::string why = "'" + shown(name) + "' has a mistake in line " +
                                    std::to_string(issue.where.line) + ": " + issue.text;
            if (!issue.late) return fail(why);
            issues.late_error(extends->where, "extends", why);
        }
        if (one_or_items(below.root.find("classes")).empty())
            return fail("'" + shown(name) + "' has no classes");
        move_to(below.root, extends->where);
        out.base = name;
        out.base_where = extends->where;
        out.base_edition = text_under(below.root, "edition");
        if (const Yaml *most = out.root.find("inherited"); most && most->entries.size() == 1)
            out.inherited = most->entries[0].key + ": " + most->entries[0].value.text;
        if (const Yaml *classes = out.root.find("classes"); classes && classes->kind == Yaml::Kind::map)
            for (const auto &one : classes->entries)
                out.stands_for.emplace_back(one.key, one.value.kind == Yaml::Kind::map
                                                         ? text_under(one.value, "as")
                                                         : one.value.text);
        const std::size_t told = issues.all().size();
        out.root = put_over(std::move(out.root), std::move(below.root), name, issues);
        // Of a class that stands for none of the base nothing else can be said.
        const auto &all = issues.all();
        if (std::any_of(all.begin() + static_cast<std::ptrdiff_t>(told), all.end(),
                        [](const Issue &issue) { return issue.path.starts_with("classes."); }))
            out.root.entries.clear();
    }

    const BaseText &base_;
    Texts packed_, used_;
    std::vector<std::string> names_, names_below_;
};

} // namespace

std::optional<std::string> shipped_base(const std::string &name) {
    const auto &names = shipped_sets();
    if (std::find(names.begin(), names.end(), name) == names.end()) return std::nullopt;
    return shipped_file(name + ".yaml");
}

Extended read_extended(const std::string &text, const BaseText &base, Issues &issues) {
    return Reader(base).read(text, issues);
}

std::vector<std::string> sets_below(const std::string &text) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view line = std::string_view(text).substr(at, end - at);
        if (line.starts_with(mark)) out.emplace_back(line.substr(mark.size()));
        at = end + 1;
    }
    return out;
}

std::vector<std::string> texts_above(const std::string &text, const std::string &below) {
    Texts bases;
    std::vector<std::string> out{unpacked(text, bases)};
    for (const auto &name : sets_below(text)) {
        if (name == below) break;
        out.push_back(bases[name]);
    }
    return out;
}

std::optional<std::string> class_below(const std::string &text, const std::string &class_id,
                                       const std::string &below) {
    const auto none = [](const std::string &) { return std::nullopt; }; // all is packed
    std::string of = text, id = class_id;
    for (std::size_t left = sets_below(text).size(); left > 0; --left) {
        Issues issues;
        const Extended read = read_extended(of, none, issues);
        if (!read.stands_for.empty()) {
            const auto here = std::find_if(read.stands_for.begin(), read.stands_for.end(),
                                           [&](const auto &one) { return one.first == id; });
            if (here == read.stands_for.end()) return std::nullopt;
            id = here->second;
        }
        if (read.base == below) return id;
        of = read.base_text;
    }
    return std::nullopt;
}

} // namespace beadbook
