# Writes OUTPUT: a C++ table of FILES, name to text. Raw strings: as hexadecimal digits they compile twice as long.
set(text "#include \"criteria/embedded.hpp\"\n\nnamespace beadbook {\n\nconst std::map<std::string, std::string> &embedded_files() {\n    static const std::map<std::string, std::string> files{\n")
foreach(file IN LISTS FILES)
  string(REGEX REPLACE "^.*/(criteria|records|web)/" "" name "${file}")
  file(READ "${file}" bytes)
  string(APPEND text "        {\"${name}\", R\"beadbook(${bytes})beadbook\"},\n")
endforeach()
string(APPEND text "    };\n    return files;\n}\n\n} // namespace beadbook\n")
file(WRITE "${OUTPUT}" "${text}")
