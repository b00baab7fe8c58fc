// Any bytes as a table: refused, or read; what was read can be written and read again, and each row is taken
// or says why not.
#include "measure/refusal.hpp"
#include "records/codecs/sheet.hpp"
#include "records/csv.hpp"

#include <cstdlib>
#include <string>

namespace {

using namespace beadbook;

void read_rows(codec::Sheet sheet, const std::string &text) {
    const WeldLine tube{Length{12 * nm_per_inch}, true};
    for (const auto &row : codec::read_sheet(sheet, text)) try {
            if (sheet == codec::Sheet::coupons) codec::coupon_fields_of(row);
            if (sheet == codec::Sheet::exams) codec::exam_of(row);
            if (sheet == codec::Sheet::indications) codec::indication_of(row, tube, Unit::inch);
        } catch (const Refusal &) {
        }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(bytes), size);
    try {
        const auto rows = read_csv(text);
        std::string again;
        for (const auto &row : rows) again += write_csv_row(row);
        if (read_csv(again) != rows) std::abort();
    } catch (const Refusal &) {
    }
    for (const auto sheet : {codec::Sheet::coupons, codec::Sheet::exams, codec::Sheet::indications}) try {
            read_rows(sheet, text);
        } catch (const Refusal &) {
        }
    return 0;
}
