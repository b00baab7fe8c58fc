#include "qualify/work.hpp"

#include "criteria/nominal_size.hpp"
#include "criteria/rule_reader.hpp"
#include "language/fields.hpp"
#include "measure/text.hpp"

#include <set>

namespace beadbook {
namespace {

class WorkReader {
public:
    WorkReader(const std::string &text, Issues &issues) : issues_(issues), root_(read_yaml(text, issues)) {}

    Work read(const std::string &rules_name, const RulesByName &open) {
        Work work;
        if (issues_.any_error() && root_.entries.empty()) return work;
        const Fields top(root_, "", {"rules", "criteria", "units", "work", "stock"}, issues_);
        const std::string name = rules_name.empty() ? top.needed_text("rules") : rules_name;
        work.criteria = top.text("criteria");
        work.unit = read_unit(top);
        if (name.empty()) return work;
        work.rules = open(name);
        if (const Yaml *stock = top.get("stock")) read_stock(*stock, work);
        top.need("work");
        for (const Yaml *node : top.items("work")) read_job(*node, work);
        if (work.jobs.empty() && top.get("work")) top.error("work", "there is no weld");
        return work;
    }

private:
    template <class F>
    void guarded(const Yaml &node, const std::string &path, F f) {
        try {
            f();
        } catch (const InputError &e) {
            issues_.error(node.where, path, e.what());
        }
    }

    void read_stock(const Yaml &node, Work &work) {
        std::vector<std::string> sizes;
        for (std::size_t i = word_traits; i < trait_count; ++i)
            sizes.emplace_back(info(static_cast<Trait>(i)).name);
        const Fields fields(node, "stock", sizes, issues_);
        for (const auto &name : sizes) {
            const Trait trait = *trait_named(name);
            for (const Yaml *word : fields.words(name))
                guarded(*word, "stock." + name, [&] {
                    work.stock[index_of(trait)].push_back(
                        parse_typed(word->text, info(*info(trait).size).dimension, work.unit).value);
                });
        }
    }

    /// One size, which may be called by a number: NPS 2, sch 40, 16 ga steel.
    static Exact size_of(const std::string &text, Trait trait, Unit unit, const BesideWall &beside) {
        std::optional<NominalSize> nominal;
        if (trait == Trait::diameter) nominal = NominalSizes::shipped().outside(text);
        if (trait == Trait::thickness || trait == Trait::weld_thickness)
            nominal = NominalSizes::shipped().wall(text, beside);
        return parse_typed(nominal ? nominal->size : text, info(*info(trait).size).dimension, unit).value;
    }

    /// `0.030 in to 0.180 in`, or one size.
    static Job::Sizes sizes_of(const std::string &text, Trait trait, Unit unit,
                               const BesideWall &beside = {}) {
        const std::size_t to = text.find(" to ");
        if (to == std::string::npos) {
            const Exact only = size_of(text, trait, unit, beside);
            return {only, only};
        }
        std::string from(trimmed(text.substr(0, to)));
        if (from.starts_with("from ")) from.erase(0, 5);
        const Job::Sizes out{size_of(from, trait, unit, beside),
                             size_of(text.substr(to + 4), trait, unit, beside)};
        if (out.to < out.from) throw InputError("'" + shown(text) + "' ends below where it begins");
        return out;
    }

    /// A wall by its schedule is of one diameter; a range of them has none.
    static BesideWall beside_wall(const Fields &fields, Unit unit) {
        BesideWall out;
        const std::string diameter = fields.text("diameter");
        out.tube = !diameter.empty();
        if (diameter.empty()) return out;
        try {
            const Job::Sizes sizes = sizes_of(diameter, Trait::diameter, unit);
            if (sizes.from == sizes.to) out.outside = sizes.from;
        } catch (const InputError &) {
            out.outside.reset(); // it is told where the diameter is read
        }
        return out;
    }

    void read_job(const Yaml &node, Work &work) {
        std::vector<std::string> keys = trait_names();
        for (const char *more : {"id", "class", "magnetic", "also"}) keys.emplace_back(more);
        const std::string name = node.find("id") ? node.find("id")->text : "?";
        const Fields fields(node, "work." + name, keys, issues_);
        Job job;
        job.where_from = node.where;
        job.id = fields.needed_text("id");
        job.class_id = fields.text("class");
        job.magnetic = fields.text("magnetic");
        if (!ids_.insert(job.id).second) fields.error("id", "a weld above has the same id");
        if (!job.magnetic.empty() && word_index(info(Fact::magnetic), job.magnetic) == 0)
            fields.error("magnetic", "found '" + shown(job.magnetic) + "'; expected yes or no");
        for (const Yaml *word : fields.words("also"))
            guarded(*word, fields.path_of("also"), [&] {
                const auto exam = exam_named(word->text);
                if (!exam)
                    throw InputError("'" + shown(word->text) + "' is no exam; expected " + exam_names_text());
                job.also.push_back(*exam);
            });
        const BesideWall beside = beside_wall(fields, work.unit);
        for (std::size_t i = 0; i < trait_count; ++i) {
            const auto trait = static_cast<Trait>(i);
            const std::string key(info(trait).name);
            if (is_size(trait)) {
                const std::string text = fields.text(key);
                if (!text.empty())
                    guarded(*fields.get(key), fields.path_of(key),
                            [&] { job.sizes[i] = sizes_of(text, trait, work.unit, beside); });
                continue;
            }
            for (const Yaml *word : fields.words(key))
                guarded(*word, fields.path_of(key), [&] {
                    check_word(*work.rules, trait, false, word->text);
                    job.words[i].push_back(word->text);
                });
        }
        work.jobs.push_back(std::move(job));
    }

    Issues &issues_;
    Yaml root_;
    std::set<std::string> ids_;
};

} // namespace

LoadedWork load_work(const std::string &text, const std::string &rules_name, const RulesByName &open) {
    Issues issues;
    Work work = WorkReader(text, issues).read(rules_name, open);
    issues.sort_by_place();
    LoadedWork out;
    if (!issues.any_error()) out.work = std::move(work);
    out.issues = issues.all();
    return out;
}

} // namespace beadbook
