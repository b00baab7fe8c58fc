#include "operations/bulk.hpp"

#include "facts/plausibility.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "operations/carried_facts.hpp"
#include "operations/coupons.hpp"
#include "operations/examining.hpp"
#include "operations/faults.hpp"
#include "operations/finishing.hpp"
#include "operations/import_notes.hpp"
#include "operations/import_numbers.hpp"
#include "operations/import_rows.hpp"
#include "operations/import_welders.hpp"
#include "operations/judging.hpp"
#include "operations/left_out.hpp"
#include "operations/logging.hpp"
#include "operations/photos.hpp"
#include "operations/same_piece.hpp"
#include "operations/selecting.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"
#include "records/codecs/carried.hpp"
#include "records/codecs/exchange.hpp"
#include "records/codecs/located.hpp"
#include "records/codecs/photo.hpp"

#include <algorithm>
#include <iterator>
#include <set>

namespace beadbook {
namespace {

constexpr std::string_view throat_over_fillet = "throat-over-fillet";
bool of_two_finds(const std::vector<std::string> &sure) { return is_meant(sure, throat_over_fillet); }
bool is_measured(const IndicationRecord &find) { return Vocabulary::shipped()[find.type].measured; }

class Importer {
public:
    Importer(Office &office, ImportRequest request) : office_(office), welders_(request.welders) {
        out_.request = std::move(request);
        out_.done.value.sheet = out_.request.sheet;
    }

    PreparedImport run() && {
        const auto &sheet = out_.request.sheet;
        if (sheet)
            take_rows(*sheet);
        else if (out_.request.lines)
            take_lines();
        else
            take_json();
        welders_.check_used();
        ask_same_pieces(office_, out_.entries, out_.request.sure);
        add_notes(out_.done.notes, std::move(notes_).all());
        return std::move(out_);
    }

private:
    std::string place(std::size_t byte) const { return codec::place_in(out_.request.text, byte); }

    void add(Entry entry) {
        Imported &taken = out_.done.value;
        ++(entry.kind == "coupon"  ? taken.coupons
           : entry.kind == "exam"  ? taken.exams
           : entry.kind == "photo" ? taken.photos
                                   : taken.indications);
        out_.entries.push_back(std::move(entry));
    }

    /// Whoever wrote the file that is imported must not choose what is opened here, and shown where it is
    /// wrong.
    void check_may_open(const std::string &key, const std::string &name) const {
        if (!out_.request.open_files && means_file(name))
            throw refused(key + ": the file '" + shown(name) + "' is opened only if you say that it may be")
                .give("open-files");
    }

    CouponRecord new_coupon(const std::string &mark, std::map<std::string, std::string> fields,
                            const std::vector<std::string> &sure_of, std::vector<CarriedFact> before,
                            const std::set<std::string> &by_settings = {}) {
        welders_.take(fields);
        for (auto &one : before) welders_.take(one.as);
        if (const auto criteria = fields.find("criteria"); criteria != fields.end())
            check_may_open("criteria", criteria->second);
        CouponRecord out = described(office_.catalogue(), {mark, fields, out_.request.sure, sure_of});
        check_new(office_.book(), mark, false);
        out.before = before;
        for (const auto &name : by_settings)
            if (fields.contains(name)) out.by_settings.insert(name);
        for (const auto &one : before)
            if (stands_against(one)) notes_.add(mark, {words_of(one)});
        notes_.add(mark, sizes_understood(fields, out));
        if (!out_.seen.emplace(mark, 0).second)
            throw refused("coupon " + mark + " is registered already, earlier in this file");
        if (!alike_) alike_.emplace(office_.book());
        alike_->take(out, out_.request.sure, sure_of);
        if (is_meant(sure_of, like_another_piece)) out.sure.emplace_back(like_another_piece);
        add(codec::entry_of(out));
        return out;
    }

    ExamRecord checked_exam(const CouponRecord &coupon, ExamRecord exam) {
        if (exam.practice_hash.empty()) check_may_open("practice", exam.practice);
        ReadyExam ready = ready_exam(office_, coupon, std::move(exam), out_.request.sure);
        notes_.add(coupon.id, ready.notes);
        auto &kept = out_.practices;
        if (ready.practice && std::find(kept.begin(), kept.end(), ready.practice) == kept.end())
            kept.push_back(ready.practice);
        return std::move(ready.record);
    }

    /// The rules that it breaks; refused unless they were set aside, where two finds contradict each other
    /// for either of them.
    void check_believable(const CouponRecord &coupon, IndicationRecord &found, Exam method,
                          const std::vector<IndicationRecord> &others) const {
        auto aside = found.sure;
        for (const auto &other : others)
            if (other.exam == found.exam && of_two_finds(other.sure)) aside.emplace_back(throat_over_fillet);
        found.sure =
            set_aside_by(Plausibility::shipped().of(coupon, found, method, others), out_.request.sure, aside);
    }

    void add_found(const CouponRecord &coupon, const IndicationRecord &found) {
        notes_.add(coupon.id, doubts_about(coupon, {found}));
        add(codec::entry_of(coupon.id, found));
    }

    void take_json() {
        std::size_t count = 0, bad = 0;
        for (auto &given : codec::read_exchange(out_.request.text)) {
            const std::string name = "coupon " + std::to_string(++count) + " (" +
                                     (given.record.id.empty() ? "?" : shown(given.record.id)) + ")";
            if (!took(given, [&](std::size_t at) { return [&, at] { return place(at) + ": " + name; }; }))
                ++bad;
        }
        faults_.check(counted(bad, "coupon"));
    }

    void take_lines() {
        std::size_t number = 0, bad = 0;
        const std::string &text = out_.request.text;
        if (trimmed(text).empty()) throw refused("there is no coupon in it; each is a line of JSON");
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = std::min(text.find('\n', at), text.size());
            const std::string line = text.substr(at, end - at);
            at = end + 1;
            ++number;
            if (trimmed(line).empty()) continue;
            const auto where = [&](std::size_t) {
                return [number] { return "line " + std::to_string(number); };
            };
            const std::size_t before = faults_.count();
            faults_.guard(where(0), [&] {
                codec::GivenCoupon given = codec::read_exchange_coupon(line);
                took(given, where);
            });
            if (faults_.count() > before) ++bad;
        }
        faults_.check(counted(bad, "line"));
    }

    template <class Where>
    bool took(codec::GivenCoupon &given, Where where) {
        const std::size_t before = faults_.count();
        const Ledger::Moment moment(office_.ledger());
        for (const auto &m : given.mistakes) faults_.add(where(m.at), m.what);
        if (given.mistakes.empty()) faults_.guard(where(given.at), [&] { take_coupon(given, where); });
        return faults_.count() == before;
    }

    template <class Where>
    void take_coupon(codec::GivenCoupon &given, Where where) {
        std::map<std::string, std::string> fields;
        for (const auto &[name, value] : given.record.fields) fields.emplace(name, value.text);
        const CouponRecord coupon = new_coupon(given.record.id, fields, given.record.sure,
                                               given.record.before, given.record.by_settings);
        notes_.add(coupon.id, sizes_understood(given.texts, coupon));
        Numbers exams("exam", coupon.id, 0), finds("indication", coupon.id, 0);
        for (const auto &exam : given.exams) {
            faults_.guard(where(exam.at), [&] { exams.claim(exam.record.number); });
            for (const auto &one : exam.indications)
                faults_.guard(where(one.at), [&] { finds.claim(one.record.number); });
        }
        for (auto &exam : given.exams) {
            faults_.guard(where(exam.at), [&] {
                exams.give(exam.record.number);
                add(codec::entry_of(coupon.id, checked_exam(coupon, exam.record)));
            });
            std::vector<IndicationRecord> measured;
            for (auto &one : exam.indications) {
                one.record.exam = exam.record.number;
                if (is_measured(one.record)) measured.push_back(one.record);
            }
            for (auto &one : exam.indications)
                faults_.guard(where(one.at), [&] {
                    check_believable(coupon, one.record, exam.record.method, measured);
                    finds.give(one.record.number);
                    add_found(coupon, one.record);
                });
            note_found(coupon.id, exam.record, static_cast<int>(exam.indications.size()));
        }
        take_photos(coupon, given, where);
    }

    /// A file only names photos: those whose bytes are on record already are kept with the coupon.
    template <class Where>
    void take_photos(const CouponRecord &coupon, codec::GivenCoupon &given, Where where) {
        std::set<int> finds;
        for (const auto &exam : given.exams)
            for (const auto &one : exam.indications) finds.insert(one.record.number);
        int number = 0;
        for (auto &[at, photo] : given.photos)
            faults_.guard(where(at), [&, &photo = photo] {
                if (photo.find > 0 && !finds.contains(photo.find))
                    throw refused("photo of #" + std::to_string(photo.find) + ", which the coupon has not");
                const auto bytes = office_.ledger().photo(photo.hash);
                if (!bytes)
                    return notes_.add(coupon.id, {"photo " + short_hash(photo) +
                                                  " is not brought along: the file only names it"});
                photo.kind = checked_photo(*bytes);
                photo.size = static_cast<std::int64_t>(bytes->size());
                photo.number = ++number;
                add(codec::entry_of(coupon.id, photo));
            });
    }

    /// A coupon on record that rows are about.
    struct Known {
        CouponState state;
        WeldLine line;
        Numbers exams, finds;
        std::vector<IndicationRecord> measured = {}; ///< dimensions, also of rows that were read
    };

    Known &known(const std::string &mark) {
        if (const auto found = known_.find(mark); found != known_.end()) return found->second;
        if (!office_.book().knows_coupon(mark)) {
            // Looking for what is spelled alike takes long in a file of strangers.
            if (faults_.full()) throw refused("there is no coupon '" + shown(mark) + "'");
            office_.book().history(mark);
        }
        Known out{office_.book().coupon(mark), {}, {}, {}, {}};
        if (const std::string &why = out.state.record.withdrawn; !why.empty())
            throw refused("coupon " + mark + " is withdrawn: " + why);
        out.line = out.state.record.facts().line;
        std::copy_if(out.state.indications.begin(), out.state.indications.end(),
                     std::back_inserter(out.measured), is_measured);
        out.exams = Numbers("exam", mark, out.state.last_exam);
        out.finds = Numbers("indication", mark, out.state.last_indication);
        out_.seen.emplace(mark, out.state.last_seq);
        return known_.emplace(mark, std::move(out)).first->second;
    }

    /// The same table twice, in rows that have no number of their own.
    void check_not_again(const Known &coupon, IndicationRecord &one) {
        if (file_.empty()) file_ = sha256(out_.request.text);
        one.file = file_;
        if (out_.request.again) return;
        for (const auto &i : coupon.state.indications)
            if (i.file == file_ && i.exam == one.exam)
                throw refused("the same table was imported already, with #" + std::to_string(i.number))
                    .give("again");
    }

    void take_rows(Sheet sheet) {
        struct Read {
            Known *coupon;
            std::size_t row;
            IndicationRecord found;
        };
        std::vector<Read> found;
        RowsAgain again;
        RowsOfFinished beyond;
        std::size_t awaited = 0;
        for (const auto &row : codec::read_sheet(sheet, out_.request.text)) {
            faults_.guard(
                [&] { return "row " + std::to_string(row.number); },
                [&] {
                    const Ledger::Moment moment(office_.ledger());
                    if (!row.fault.empty()) throw refused(row.fault);
                    const std::string mark = row.cell("coupon");
                    if (sheet == Sheet::coupons) {
                        new_coupon(mark, codec::coupon_fields_of(row), codec::sure_of(row),
                                   codec::carried_from_cell(row.cell(codec::carried_key)));
                        return;
                    }
                    Known &coupon = known(mark);
                    if (sheet == Sheet::exams) {
                        ExamRecord exam = codec::exam_of(row);
                        coupon.exams.claim(exam.number);
                        if (exam.finished && exam.finished->found > 0) ++awaited;
                        add(codec::entry_of(mark, checked_exam(coupon.state.record, std::move(exam))));
                    } else {
                        IndicationRecord one =
                            codec::indication_of(row, coupon.line, coupon.state.record.fixed_unit());
                        if (one.exam == 0) throw refused("the row has no exam number");
                        // The exams' table comes first, so a finished exam takes as many as it found.
                        const ExamRecord &exam = coupon.state.needed_exam(one.exam);
                        check_not_again(coupon, one);
                        if (exam.finished)
                            beyond.take(coupon.state, exam, ++coupon.state.finds[one.exam], row.number);
                        check_believable(coupon.state.record, one, exam.method, coupon.measured);
                        if (is_measured(one)) coupon.measured.push_back(one);
                        coupon.finds.claim(one.number);
                        // A number that nobody had says that it is a find of its own.
                        if (one.number == 0) again.take(coupon.state, row.number, one);
                        found.push_back({&coupon, row.number, std::move(one)});
                    }
                });
        }
        const std::size_t bad = faults_.count();
        faults_.check(counted(bad + beyond.tell(faults_), "row"), beyond.remedies());
        if (!out_.request.again) again.check();
        std::map<Known *, std::set<int>> exams;
        for (auto &[coupon, row, one] : found) {
            coupon->finds.give(one.number);
            add_found(coupon->state.record, one);
            exams[coupon].insert(one.exam);
        }
        for (const auto &[coupon, numbers] : exams)
            for (const int number : numbers)
                note_found(coupon->state.record.id, coupon->state.needed_exam(number),
                           coupon->state.finds[number]);
        if (awaited > 0)
            out_.done.notes.push_back(
                counted(awaited, "exam says that it found something, and its",
                        "exams say that they found something, and their") +
                " finds are not on record: until the table of indications is imported too, " +
                (awaited == 1 ? "it does" : "they do") + " not count");
    }

    void note_found(const std::string &mark, const ExamRecord &exam, int on_record) {
        if (std::string told = found_otherwise(exam, on_record); !told.empty()) notes_.add(mark, {told});
    }

    Office &office_;
    PreparedImport out_;
    Faults faults_;
    ImportNotes notes_;
    std::map<std::string, Known> known_;
    std::optional<MarksAlike> alike_;
    WeldersHere welders_;
    std::string file_; ///< SHA-256 of the table
};

bool written_to_since(Ledger &ledger, const PreparedImport &prepared) {
    return std::any_of(prepared.seen.begin(), prepared.seen.end(), [&](const auto &coupon) {
        return ledger.last_entry_of(Family::coupon, coupon.first) != coupon.second;
    });
}

} // namespace

ExportCount export_record(const Shops &shops, const ExportRequest &request,
                          const std::function<void(std::string_view)> &give) {
    ExportCount out;
    codec::ExchangeText whole;
    const bool in_one = !request.sheet && !request.lines;
    if (request.sheet) give(codec::sheet_head(*request.sheet));
    if (in_one) give(whole.head());
    LeftOut left_out(shops, request.of);
    select(shops, request.of, [&](CouponAtHand &one) {
        if (!one.coupon().record.withdrawn.empty()) return out.withdrawn.push_back(one.coupon().record.id);
        const CouponState coupon = one.to_carry(left_out);
        ++out.coupons;
        if (!request.sheet)
            out.photos += static_cast<std::size_t>(
                std::count_if(coupon.photos.begin(), coupon.photos.end(),
                              [](const PhotoRecord &photo) { return photo.withdrawn.empty(); }));
        give(request.sheet   ? codec::sheet_rows(*request.sheet, coupon)
             : request.lines ? codec::exchange_line(coupon)
                             : whole.coupon(coupon));
    });
    if (in_one) give(whole.end());
    // The other tables say nothing of the coupon itself.
    if (!request.sheet || *request.sheet == Sheet::coupons) {
        out.failed = left_out.told();
        out.revoked = left_out.revoked();
    }
    return out;
}

PreparedImport prepare_import(Office &office, ImportRequest request) {
    return Importer(office, std::move(request)).run();
}

Done<Imported> store_import(Writing &writing, PreparedImport prepared) {
    if (written_to_since(writing.ledger(), prepared))
        prepared = prepare_import(writing.office(), std::move(prepared.request));
    for (const auto &practice : prepared.practices)
        writing.ledger().keep_criteria(practice->hash, practice->name, practice->text);
    for (auto &entry : prepared.entries) writing.add(std::move(entry));
    check_may_bring_in(writing, prepared.seen,
                       [&](const std::string &mark) { keep_what_may_go(writing, mark); });
    return std::move(prepared.done);
}

} // namespace beadbook
