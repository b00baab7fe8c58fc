#include "facts/plausibility_words.hpp"

#include "criteria/methods.hpp"
#include "facts/filler_words.hpp"
#include "facts/fillet_of_butt.hpp"
#include "facts/gauge_metal.hpp"
#include "facts/group_metal.hpp"
#include "facts/process_clash.hpp"
#include "facts/runs_and_layers.hpp"
#include "facts/weld_sides.hpp"

namespace beadbook {
namespace {

constexpr auto facts_together = std::to_array<HeldTogether>({
    {Said::gauge, "gauge", "of another metal", gauge_of_another_metal},
    {Said::metal_group, "metal group", "of another metal", group_of_another_metal},
    {Said::no_filler, "no filler", "beside one", filler_beside_none},
    {Said::electrode, "electrode", "said to be no filler", electrode_beside_none},
    {Said::fillet_filler, "filler of fillet", "none", fillet_beside_none},
    {Said::filler_metal, "filler metal", "of another metal", filler_of_another_metal},
    {Said::filler_form, "filler form", "of another process", filler_of_another_process},
    {Said::transfer, "transfer", "of another process", transfer_of_another_process},
    {Said::flux, "flux", "falling off", position_of_another_process},
    {Said::spoiled, "process", "of another metal", metal_of_another_process},
    {Said::backing, "backing", "of other sides", backing_of_other_sides},
    {Said::closed, "sides", "of a closed inside", sides_of_closed},
    {Said::runs, "runs", "of other layers", runs_of_other_layers},
    {Said::layered, "processes", "more than layers", layers_under_processes},
    {Said::butt_fillet, "size of fillet", "of a butt", fillet_of_butt},
});

} // namespace

std::span<const HeldTogether> held_together() { return facts_together; }

std::vector<std::string> words_of_fact(Fact fact) { return info(fact).words; }

const Names &plausibility_names() {
    static const Names names = [] {
        Names out;
        for (std::size_t q = 0; q < quantity_count; ++q) {
            const QuantityInfo &one = info(static_cast<Quantity>(q));
            if (one.scope == Scope::coupon || one.scope == Scope::indication)
                out.add(
                    {std::string(one.name), Name::Kind::quantity, static_cast<Slot>(q), one.dimension, {}});
        }
        for (const auto &[name, slot] : {std::pair("across", across),
                                         {"largest fillet size", largest_fillet},
                                         {"largest throat", largest_throat}})
            out.add({name, Name::Kind::quantity, slot_of(slot), Dimension::length, {}});
        const auto word = [&](const char *name, Said said, std::vector<std::string> words) {
            out.add({name, Name::Kind::word, static_cast<Slot>(said), Dimension::number, std::move(words)});
        };
        word("joint", Said::joint, words_of_fact(Fact::joint));
        word("form", Said::form, words_of_fact(Fact::form));
        word("seam", Said::seam, words_of_fact(Fact::seam));
        word("magnetic", Said::magnetic, words_of_fact(Fact::magnetic));
        word("position", Said::position, {"round a fixed tube", "other"});
        word("metal", Said::metal, {"one that is not magnetic", "other"});
        word("shape", Said::shape, {"linear", "rounded"});
        word("kind", Said::kind, {"imperfection", "dimension"});
        word("group", Said::group, {"yes", "no"});
        word("sizes", Said::sizes, {"length alone", "other"});
        word("method", Said::method, exam_names());
        word("micro", Said::micro, {"yes", "no"});
        word("loss", Said::loss, {"yes", "no"});
        word("root find", Said::root_find, {"on the face", "other"});
        word("face find", Said::face_find, {"at the root", "other"});
        word("type", Said::type, {spoken_types.begin(), spoken_types.end()});
        word("units", Said::units, {"in", "mm", "either"});
        word("measured in", Said::measured_in, {"mm", "other"});
        word("unit written", Said::unit_written, {"yes", "no"});
        word("fraction", Said::fraction, {"of an inch", "other"});
        word("joint form", Said::joint_form, words_of_fact(Fact::joint_form));
        word("test position", Said::of_fillet, {"of a fillet", "other"});
        word("rotated", Said::rotated, {"yes", "no"});
        for (const HeldTogether &one : facts_together)
            out.add({std::string(one.name),
                     Name::Kind::word,
                     static_cast<Slot>(one.said),
                     Dimension::number,
                     {std::string(one.contradicting), "other"}});
        out.add({"welded", Name::Kind::day, static_cast<Slot>(Dated::welded), Dimension::number, {}});
        out.add({"examined with no day of the weld on record",
                 Name::Kind::day,
                 static_cast<Slot>(Dated::examined_undated),
                 Dimension::number,
                 {}});
        out.add({"examined", Name::Kind::day, static_cast<Slot>(Dated::examined), Dimension::number, {}});
        return out;
    }();
    return names;
}

} // namespace beadbook
