#pragma once

#include "measure/refusal.hpp"
#include "operations/examining.hpp"
#include "operations/log_sheet.hpp"

#include <functional>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// What a sheet says of one method on one coupon.
struct SheetSaid {
    bool none = false;
    std::string incomplete;
    std::string remark;                             ///< behind `none`
    std::vector<std::pair<int, std::string>> finds; ///< line number; the line, blanks where its head stood

    bool anything() const { return none || !incomplete.empty() || !finds.empty(); }
};
struct SheetCoupon {
    std::string mark;
    int line = 0; ///< where it is named first
    std::map<Exam, SheetSaid> said;
};
struct SheetHead {
    int line = 0;
    bool good = true; ///< all that it says was understood
    std::vector<Exam> methods;
    ExamRequest exam;                      ///< coupon and method are filled in for each
    std::map<Exam, std::string> practices; ///< of one method, in place of the exam's
    std::vector<SheetCoupon> coupons;
};

/// The mistakes of a sheet by their lines; what is said of a line is said once.
class SheetFaults {
public:
    explicit SheetFaults(std::string sheet) : sheet_(std::move(sheet)) {}

    template <class F>
    void guard(int line, F f) {
        try {
            f();
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            add(line, e.what(), e.missing() ? e.field() : "");
        }
    }
    /// `column` is counted from 1; 0: of the whole line.
    void add(int line, const std::string &what, const std::string &lacking = "", std::size_t column = 0);
    std::size_t count() const { return all_.size(); }
    /// Throws Refusal if there are any, in the order of the lines.
    void check() const;

private:
    struct Fault {
        int line;
        std::size_t column;
        std::string what, lacking;
    };

    std::string sheet_;
    std::vector<Fault> all_;
    std::set<std::pair<int, std::string>> told_;
};

using KnowsCoupon = std::function<bool(const std::string &mark)>;
/// The heads of a sheet with what stands below them.
std::vector<SheetHead> read_sheet(const SheetRequest &request, const KnowsCoupon &knows, SheetFaults &faults);

} // namespace beadbook
