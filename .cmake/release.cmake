# cmake -C .cmake/release.cmake -B .build/release
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
