# What is installed beside the program, and the Debian package of it all.

include(GNUInstallDirs)

# The manual page and the completions follow from the list of commands.
add_executable(shell-pages shell_pages_main.cpp)
target_link_libraries(shell-pages PRIVATE linewright_core)
linewright_options(shell-pages)
set(shell_folder ${CMAKE_BINARY_DIR}/shell)
file(MAKE_DIRECTORY ${shell_folder})
# Of the day, or of SOURCE_DATE_EPOCH where that is set.
string(TIMESTAMP build_date "%Y-%m-%d" UTC)
string(TIMESTAMP changelog_date "%a, %d %b %Y %H:%M:%S +0000" UTC)
set(shell_pages ${shell_folder}/linewright.1.gz ${shell_folder}/linewright.bash
                ${shell_folder}/_linewright ${shell_folder}/linewright.fish)
add_custom_command(
  OUTPUT ${shell_pages}
  COMMAND shell-pages ${shell_folder} ${build_date}
  COMMAND gzip -9nf ${shell_folder}/linewright.1
  DEPENDS shell-pages
  VERBATIM)
add_custom_target(shell_pages ALL DEPENDS ${shell_pages})

set(doc_folder ${CMAKE_INSTALL_DATADIR}/doc/linewright)
install(TARGETS linewright RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${shell_folder}/linewright.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${shell_folder}/linewright.bash
        DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME linewright)
install(FILES ${shell_folder}/_linewright DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions)
install(FILES ${shell_folder}/linewright.fish
        DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${doc_folder})
install(DIRECTORY ${PROJECT_SOURCE_DIR}/examples/manual ${PROJECT_SOURCE_DIR}/examples/pictures
        DESTINATION ${doc_folder})
install(DIRECTORY ${PROJECT_SOURCE_DIR}/routes/ DESTINATION ${doc_folder}/demo)

# The licence stands at the end of the README, and is copied from there.
file(READ ${PROJECT_SOURCE_DIR}/README.md readme)
string(REGEX REPLACE ".*\n## Licence\n+" "" licence "${readme}")
file(WRITE ${shell_folder}/copyright "linewright\n\n${licence}\n"
"The script of the report holds ogl, which is in the public domain by the Unlicense.\n")
file(WRITE ${shell_folder}/changelog
"linewright (${PROJECT_VERSION}) unstable; urgency=medium\n\n  * As built from its sources.\n\n"
" -- linewright <linewright@linewright.example>  ${changelog_date}\n")
execute_process(COMMAND gzip -9nf ${shell_folder}/changelog)
install(FILES ${shell_folder}/copyright ${shell_folder}/changelog.gz DESTINATION ${doc_folder})

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME linewright)
set(CPACK_PACKAGE_VENDOR linewright)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "routing of lines and cables in a light aeroplane")
set(CPACK_PACKAGE_DESCRIPTION
"Checks how static, pitot and vent lines, control cables and wires are run in a
 light aeroplane that is being built: every bend, span and gap against limits,
 each with its source; and says what to buy, cut, drill, rig and leak-test.")
set(CPACK_PACKAGE_CONTACT "linewright <linewright@linewright.example>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_PACKAGE_DIRECTORY ${CMAKE_BINARY_DIR}/package)
set(CPACK_VERBATIM_VARIABLES ON)
include(CPack)
