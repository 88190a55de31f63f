@echo off
rem Starts Galena on Windows: finds a JDK, builds once when the jar is missing, then runs it.
rem Written without a Windows machine at hand and never run there: please report what is wrong with it.
rem Unlike the script for other systems it does not notice that sources are newer than the jar: delete
rem desk\target\galena.jar to have it built again.
setlocal EnableExtensions

set "home=%~dp0"
if "%home:~-1%"=="\" set "home=%home:~0,-1%"
set "jar=%home%\desk\target\galena.jar"

set "java="
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" call :try "%JAVA_HOME%"
if not defined java for /f "delims=" %%J in ('where java 2^>nul') do if not defined java for %%P in ("%%~dpJ..") do call :try "%%~fP"
if not defined java for /d %%J in ("%ProgramFiles%\Java\*" "%ProgramFiles%\Eclipse Adoptium\*" "%ProgramFiles%\Microsoft\jdk*" "%ProgramFiles%\Zulu\*") do if not defined java call :try "%%~fJ"
if not defined java (
  echo galena: no Java 17 or newer found. Install a JDK, or set JAVA_HOME to one. 1>&2
  exit /b 1
)

if exist "%jar%" goto run
if not exist "%jdk%\bin\javac.exe" (
  echo galena: building needs a JDK, and "%jdk%" has no compiler. Install one, or set JAVA_HOME to one. 1>&2
  exit /b 1
)
where mvn >nul 2>nul || (
  echo galena: building needs Maven once: put mvn on the path. 1>&2
  exit /b 1
)
echo galena: building once; the first time takes a minute or two and fetches libraries 1>&2
pushd "%home%"
set "JAVA_HOME=%jdk%"
call mvn -q -B -ntp -Dmaven.test.skip=true -Dspotless.check.skip=true -Dgalena.warnings=-Xdiags:compact package -pl desk -am 1>&2
set "built=%ERRORLEVEL%"
popd
if not "%built%"=="0" (
  echo galena: the build failed: see above 1>&2
  exit /b 1
)

:run
rem An archive of loaded classes, made once, halves the start. Where it does not fit it is passed over; -Xlog:disable keeps that quiet.
set "archive=%home%\desk\target\galena-windows.jsa"
if not exist "%archive%" "%java%" -XX:ArchiveClassesAtExit="%archive%" -Xlog:disable -cp "%jar%" galena.desk.Rehearsal >nul 2>nul
"%java%" -Xlog:disable -Xlog:all=error:stderr -Xshare:auto -XX:SharedArchiveFile="%archive%" -XX:+UseSerialGC -Dfile.encoding=UTF-8 -jar "%jar%" %*
exit /b %ERRORLEVEL%

rem Takes the JDK at %1 if it is 17 or newer.
:try
set "version="
if exist "%~1\release" for /f "tokens=2 delims==" %%V in ('findstr /b "JAVA_VERSION=" "%~1\release"') do set "version=%%~V"
if not defined version exit /b 0
for /f "tokens=1 delims=.+-" %%M in ("%version%") do if %%M GEQ 17 (
  set "jdk=%~1"
  set "java=%~1\bin\java.exe"
)
exit /b 0
