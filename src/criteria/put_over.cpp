#include "criteria/put_over.hpp"

#include "criteria/changed_standing.hpp"
#include "criteria/meant_rule.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {

std::string text_under(const Yaml &map, std::string_view key) {
    const Yaml *value = map.find(key);
    return value && value->kind == Yaml::Kind::scalar ? value->text : "";
}

std::vector<const Yaml *> one_or_items(const Yaml *node) {
    std::vector<const Yaml *> out;
    if (node && node->kind == Yaml::Kind::scalar) out.push_back(node);
    if (node)
        for (const auto &item : node->items) out.push_back(&item);
    return out;
}

namespace {

constexpr std::array<std::string_view, 6> lists{"scope",          "relevance", "merge",
                                                "required exams", "rules",     "blanks"};
Yaml scalar(std::string text, Where where) {
    Yaml out;
    out.where = where;
    out.text = std::move(text);
    return out;
}

Yaml *find(Yaml &map, std::string_view key) {
    for (auto &entry : map.entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}
void put(Yaml &map, std::string_view key, Yaml value) {
    if (Yaml *there = find(map, key))
        *there = std::move(value);
    else
        map.entries.push_back({std::string(key), value.where, value});
}
void drop(Yaml &map, std::string_view key) {
    std::erase_if(map.entries, [&](const Yaml::Entry &entry) { return entry.key == key; });
}
class Extending {
public:
    Extending(Yaml own, Yaml base, std::string base_name, Issues &issues)
        : own_(std::move(own)), base_(std::move(base)), base_name_(std::move(base_name)), issues_(issues) {}

    Yaml merged() {
        for (const Yaml *one : one_or_items(base_.find("classes")))
            base_classes_.push_back(one->kind == Yaml::Kind::scalar ? one->text : text_under(*one, "id"));
        classes_ = base_classes_;
        take_out();
        rename_classes();
        lower_standings();
        cite();
        ask_standing_of_named(own_, base_, base_name_, issues_);
        change();
        Yaml out = own_;
        for (const char *key : {"extends", "inherited", "cited as", "without", "changes"}) drop(out, key);
        for (const char *key : {"notes", "units", "classes", "ordered", "linear"}) {
            if (out.find(key) && std::string_view(key) != "classes") continue;
            if (const Yaml *value = base_.find(key)) put(out, key, *value);
        }
        for (const char *key : {"quantities", "formulas", "tables"}) put_map(out, key);
        for (const auto key : lists) put_list(out, key);
        for (const char *key : {"gaps", "silence"}) {
            const Yaml *below = base_.find(key);
            if (!below) continue;
            Yaml all = *below;
            if (const Yaml *mine = own_.find(key))
                all.items.insert(all.items.end(), mine->items.begin(), mine->items.end());
            if (!all.items.empty()) put(out, key, std::move(all));
        }
        return out;
    }

private:
    void error(const Yaml &node, const std::string &path, const std::string &text) {
        issues_.error(node.where, path, text);
    }

    std::vector<std::string> ids_in_base() const {
        std::vector<std::string> out;
        for (const auto key : lists)
            for (const Yaml *one : one_or_items(base_.find(key)))
                if (one->kind == Yaml::Kind::map) out.push_back(text_under(*one, "id"));
        return out;
    }

    /// Every part of the base that has a clause of its own.
    template <class Change>
    void each_part(Change change) {
        for (const auto key : lists)
            if (Yaml *all = find(base_, key))
                for (auto &part : all->items) change(part);
        if (Yaml *linear = find(base_, "linear")) change(*linear);
    }

    void take_out() {
        const auto known = ids_in_base();
        for (const Yaml *word : one_or_items(own_.find("without"))) {
            std::size_t gone = 0;
            for (const auto key : lists)
                if (Yaml *list = find(base_, key))
                    gone += std::erase_if(
                        list->items, [&](const Yaml &one) { return text_under(one, "id") == word->text; });
            if (Yaml *gaps = find(base_, "gaps"))
                gone += std::erase_if(gaps->items,
                                      [&](const Yaml &one) { return text_under(one, "text") == word->text; });
            if (gone == 0)
                error(*word, "without",
                      "nothing in " + base_name_ + " is called '" + shown(word->text) + "'" +
                          did_you_mean(word->text, known));
            unanswer(word->text);
        }
    }

    /// What the base answers about a part goes with it, also where it now says something else.
    void unanswer(const std::string &of) {
        if (Yaml *silence = find(base_, "silence"))
            std::erase_if(silence->items, [&](const Yaml &one) { return text_under(one, "of") == of; });
    }

    /// `classes: {EXC3: B}`: what the base says for B stands for EXC3.
    void rename_classes() {
        const Yaml *map = own_.find("classes");
        if (!map) return;
        if (map->kind != Yaml::Kind::map)
            return error(*map, "classes",
                         "expected a map from each class to the one of " + base_name_ +
                             " that it stands for, such as {" + base_classes_.front() + ": " +
                             base_classes_.front() + "}; left out, they are the same");
        classes_.clear();
        Yaml list;
        list.kind = Yaml::Kind::list;
        list.where = map->where;
        for (const auto &entry : map->entries) {
            Yaml info;
            info.kind = Yaml::Kind::map;
            info.where = entry.key_where;
            put(info, "id", scalar(entry.key, entry.key_where));
            std::string as = entry.value.text;
            if (entry.value.kind == Yaml::Kind::map) {
                as = text_under(entry.value, "as");
                if (const Yaml *title = entry.value.find("title")) put(info, "title", *title);
                for (const auto &one : entry.value.entries)
                    if (one.key != "as" && one.key != "title")
                        issues_.error(one.key_where, "classes." + entry.key,
                                      "unknown key '" + shown(one.key) + "'; expected as or title");
            }
            if (std::find(base_classes_.begin(), base_classes_.end(), as) == base_classes_.end())
                error(entry.value, "classes." + entry.key,
                      "'" + shown(as) + "' is no class of " + base_name_ + "; expected " +
                          listed(base_classes_, "or") + did_you_mean(as, base_classes_));
            classes_.push_back(entry.key);
            stands_for_.emplace_back(entry.key, as);
            list.items.push_back(std::move(info));
        }
        put(base_, "classes", std::move(list));
        each_part([&](Yaml &part) { rename_in(part); });
        if (Yaml *gaps = find(base_, "gaps"))
            for (auto &one : gaps->items) rename_in(one);
        for (const auto key : lists) drop_classless(key);
        drop_classless("gaps");
    }

    void rename_in(Yaml &part) {
        for (const auto key : class_maps)
            if (Yaml *map = find(part, key); map && map->kind == Yaml::Kind::map) {
                Yaml out = *map;
                out.entries.clear();
                for (const auto &[mine, as] : stands_for_)
                    if (const Yaml *value = map->find(as)) out.entries.push_back({mine, map->where, *value});
                *map = std::move(out);
            }
        drop_if_empty(part, "standing of");
        Yaml *classes = find(part, "classes");
        if (!classes) return;
        Yaml out;
        out.kind = Yaml::Kind::list;
        out.where = classes->where;
        for (const auto &[mine, as] : stands_for_)
            for (const Yaml *word : one_or_items(classes))
                if (word->text == as) out.items.push_back(scalar(mine, classes->where));
        *classes = std::move(out);
    }
    static void drop_if_empty(Yaml &part, std::string_view key) {
        if (const Yaml *map = part.find(key); map && map->entries.empty()) drop(part, key);
    }
    /// Parts for classes that this set does not have.
    void drop_classless(std::string_view key) {
        if (Yaml *all = find(base_, key))
            std::erase_if(all->items, [](const Yaml &one) {
                const Yaml *classes = one.find("classes");
                return classes && classes->kind == Yaml::Kind::list && classes->items.empty();
            });
    }

    /// What another edition was read in is not read in this one.
    void lower_standings() {
        const Yaml *node = own_.find("inherited");
        if (!node) return;
        constexpr std::array<std::string_view, 3> sure{"read", "second hand", "memory"};
        const auto rank = [&](std::string_view key) {
            return std::find(sure.begin(), sure.end(), key) - sure.begin();
        };
        const bool one = node->kind == Yaml::Kind::map && node->entries.size() == 1 &&
                         (node->entries[0].key == "second hand" || node->entries[0].key == "memory") &&
                         !node->entries[0].value.text.empty();
        if (!one)
            return error(
                *node, "inherited",
                "expected how sure what is inherited is at most, {second hand: why} or {memory: why}");
        const Yaml::Entry &most = node->entries[0];
        const auto lower = [&](Yaml &standing) {
            if (standing.kind != Yaml::Kind::map || standing.entries.size() != 1) return;
            Yaml::Entry &was = standing.entries[0];
            if (rank(was.key) >= rank(most.key)) return;
            was.value.text = most.value.text + "; there " + was.key + ": " + was.value.text;
            was.key = most.key;
        };
        const auto lower_in = [&](Yaml &part) {
            if (Yaml *standing = find(part, "standing")) lower(*standing);
            if (Yaml *of = find(part, "standing of"))
                for (auto &entry : of->entries) lower(entry.value);
        };
        each_part(lower_in);
    }

    /// A clause that is taken over is one of the other standard.
    void cite() {
        const std::string standard = text_under(own_, "cited as");
        if (standard.empty()) return;
        each_part([&](Yaml &part) {
            if (Yaml *clause = find(part, "clause")) clause->text = standard + " " + clause->text;
        });
    }

    /// Single keys of inherited rules, and of a limit single classes.
    void change() {
        const Yaml *changes = own_.find("changes");
        if (!changes) return;
        if (changes->kind != Yaml::Kind::list)
            return error(*changes, "changes", "expected a list, each entry beginning with '- '");
        for (const auto &one : changes->items) {
            const std::string id = text_under(one, "id");
            if (id.empty()) {
                error(one, "changes", no_id_words(one, base_, base_name_));
                continue;
            }
            Yaml *rule = nullptr;
            std::vector<std::string> known;
            if (Yaml *rules = find(base_, "rules"))
                for (auto &of : rules->items) {
                    known.push_back(text_under(of, "id"));
                    if (known.back() == id) rule = &of;
                }
            if (!rule) {
                error(one, "changes",
                      "no rule of " + base_name_ + " is called '" + shown(id) + "'" +
                          did_you_mean(id, known));
                continue;
            }
            if (const Yaml *whole = own_rule(id))
                issues_.late_error(one.where, "changes",
                                   "rule '" + shown(id) + "' stands whole under 'rules' too (line " +
                                       std::to_string(whole->where.line) + "), in place of that of " +
                                       base_name_ +
                                       ", so what is said here would be lost: say it there, or take the rule "
                                       "out of 'rules'");
            rule->where = one.where;
            ask_standing_anew(one, *rule, classes_, issues_);
            for (const auto &entry : one.entries) {
                if (entry.key == "id") continue;
                change_key(*rule, entry);
                if (!is_about_source(entry.key)) unanswer(id);
            }
        }
    }

    /// Null: there is none of that id.
    const Yaml *own_rule(const std::string &id) const {
        const Yaml *rules = own_.find("rules");
        if (!rules || rules->kind != Yaml::Kind::list) return nullptr;
        const auto at = std::find_if(rules->items.begin(), rules->items.end(),
                                     [&](const Yaml &one) { return text_under(one, "id") == id; });
        return at == rules->items.end() ? nullptr : &*at;
    }

    static bool is_about_source(std::string_view key) {
        constexpr std::array<std::string_view, 6> all{"title",       "clause",  "standing",
                                                      "standing of", "reading", "says"};
        return std::find(all.begin(), all.end(), key) != all.end();
    }

    void change_key(Yaml &rule, const Yaml::Entry &entry) {
        Yaml *was = find(rule, entry.key);
        const bool by_class = holds_class_by_class(entry);
        if (!was || !by_class) return put(rule, entry.key, entry.value);
        if (was->kind == Yaml::Kind::scalar) {
            Yaml all;
            all.kind = Yaml::Kind::map;
            all.where = was->where;
            for (const auto &id : classes_) put(all, id, *was);
            *was = std::move(all);
        }
        for (const auto &one : entry.value.entries) put(*was, one.key, one.value);
    }

    void put_map(Yaml &out, std::string_view key) {
        const Yaml *below = base_.find(key);
        if (!below || below->kind != Yaml::Kind::map) return;
        Yaml all = *below;
        if (const Yaml *mine = own_.find(key)) {
            if (mine->kind != Yaml::Kind::map) return;
            for (const auto &entry : mine->entries) {
                if (all.find(entry.key)) unanswer(entry.key);
                put(all, entry.key, entry.value);
                for (auto &one : all.entries)
                    if (one.key == entry.key) one.key_where = entry.key_where;
            }
        }
        put(out, key, std::move(all));
    }

    /// Those of the base in their order, with what has the same id here in place of it; then the new ones.
    void put_list(Yaml &out, std::string_view key) {
        const Yaml *below = base_.find(key), *mine = own_.find(key);
        if (!below || (mine && mine->kind != Yaml::Kind::list)) return;
        if (below->kind != Yaml::Kind::list) {
            if (!mine) put(out, key, *below);
            return;
        }
        Yaml all = *below;
        if (mine)
            for (const auto &one : mine->items) {
                const std::string id = text_under(one, "id");
                const auto same = std::find_if(all.items.begin(), all.items.end(), [&](const Yaml &there) {
                    return !id.empty() && text_under(there, "id") == id;
                });
                if (same == all.items.end()) {
                    all.items.push_back(one);
                } else {
                    unanswer(id);
                    *same = one;
                }
            }
        if (!all.items.empty()) put(out, key, std::move(all));
    }

    Yaml own_, base_;
    std::string base_name_;
    Issues &issues_;
    std::vector<std::string> base_classes_, classes_; ///< classes of the base; and here
    std::vector<std::pair<std::string, std::string>> stands_for_;
};

} // namespace

Yaml put_over(Yaml own, Yaml base, const std::string &base_name, Issues &issues) {
    return Extending(std::move(own), std::move(base), base_name, issues).merged();
}

} // namespace beadbook
