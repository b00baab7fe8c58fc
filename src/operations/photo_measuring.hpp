#pragma once

#include "measure/photo_scale.hpp"
#include "operations/office.hpp"

#include <array>

namespace beadbook {

/// What somebody set and typed; all marks in pixels of the picture.
struct PhotoMeasureRequest {
    std::string coupon, photo;        ///< the photo's number or hash
    std::string known;                ///< the length between the first two marks
    std::array<std::string, 8> marks; ///< x and y of both ends of the known length, then of the find
    std::string off;                  ///< by how many pixels each mark may be off
    std::string measure = "size";     ///< of the find: size, length, width, depth, height
};
/// A proposal: nothing is stored, and whoever enters it types what he stands for.
struct MeasuredOnPhoto {
    PhotoRecord photo;
    PhotoSize size;
    Typed known;
    std::string line; ///< of a log: the find that the photo shows with this measure, else without a type
    int find = 0;     ///< that the line is of; 0: of a new one
    std::vector<ExamRecord> open_exams = {}; ///< under which a new one can be logged
};
/// Throws Refusal (field "known", "marks", "off" or "measure"): as size_on_photo does, and what is no number.
MeasuredOnPhoto measure_on_photo(Office &office, const PhotoMeasureRequest &request);

/// Words of measures that can be read from a picture.
std::vector<std::string> photo_measures();

} // namespace beadbook
