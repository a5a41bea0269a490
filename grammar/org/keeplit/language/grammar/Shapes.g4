/*
 * The shapes of single lines: one small rule a line. What stands inside a phrase (a condition, a step, an
 * attribute) depends on the equipment kinds and is resolved afterwards, word by word, from a lexicon.
 * The word "the" never gets here; it is optional everywhere.
 */
parser grammar Shapes;

options { tokenVocab = Words; }

// ---- what all five kinds of file share

name      : WORD | STRING ;
names     : name ( separator name )* ;
separator : COMMA AND? | AND ;
revision  : NUMBER | name ;
any       : . ;
attribute : ~COMMA* ;
phrase    : ~COMMA+ ;

languageLine : LANGUAGE NUMBER EOF ;
titleLine    : TITLE STRING EOF ;
usesLine     : USES EQUIPMENT? names EOF ;

// ---- equipment

equipmentHead : EQUIPMENT name STRING? EOF ;
kindHead      : KIND name IS WORD phrase EOF ;
dutyLine      : WORD attribute ( COMMA attribute )* EOF ;
modeLine      : MODE name value ( COMMA value )* EOF ;
value         : name | ON ;
verbLine      : VERB form SLASH form EOF ;
form          : ~SLASH+ ;
ratingLine    : RATING phrase EOF ;
conductorLine : CONDUCTOR name attribute ( COMMA attribute )* EOF ;
spacingLine   : WORD name attribute ( COMMA attribute )* EOF ;

// ---- network

networkHead : NETWORK name STRING? EOF ;
systemLine  : SYSTEM attribute ( COMMA attribute )* EOF ;
limitsLine  : WORD attribute ( COMMA attribute )* EOF ;
loadCaseLine : WORD WORD name any* EOF ;
coordinationLine : WORD name ( BEFORE name )+ EOF ;
elementLine : name name place ( COMMA attribute )* EOF ;
place       : FROM name TO name | AT name ;

// ---- rules

rulebookHead : RULEBOOK name REVISION revision EOF ;
ruleHead     : RULE name EOF ;
extendsLine  : WORD kept EOF ;
settingLine  : WORD setting EOF ;
overrideLine : WORD RULE name BECAUSE STRING EOF ;
kept         : name ( WITH setting ( separator setting )* )? ;
setting      : name NUMBER unit? ;
unit         : name | PERCENT ;
textLine     : ( SAYS | BECAUSE | CITATION | CAUTION | RECORDS ) STRING EOF ;

// ---- procedure: header

procedureHead : PROCEDURE name REVISION revision EOF ;
variantHead   : VARIANT name STRING? OF name EOF ;
keepsLine     : KEEPS kept ( separator kept )* EOF ;
parameterLine : FOR parameter ( separator parameter )* EOF ;
parameter     : ( WORD | WITH )+ ;
crewLine      : CREW EOF ;
personLine    : name STRING ( COMMA attribute )* EOF ;
temporaryHead : TEMPORARY EOF ;
temporaryLine : name WORD FOR EACH PHASE OF phrase EOF ;
permitLine    : ( HOLD | CLEARANCE ) WORD FOR phrase COMMA HELD AT holders COMMA BY name ( COMMA WITH names )? EOF ;
holders       : any+ ;
provedLine    : PROVED ON name ( WITH bindings )? EOF ;
bindings      : binding ( separator binding )* ;
binding       : name AS name ;
outageLine    : PLANNED OUTAGE OF names EOF ;
startsLine    : STARTS WITH EOF ;
endsLine      : ENDS WITH EOF ;

// ---- procedure: groups

stageLine   : STAGE STRING EOF ;
groupLine   : ( TOGETHER | IN ANY? ORDER ) EOF ;
forEachLine : FOR EACH PHASE WORD OF phrase EOF ;
repeatLine  : REPEAT ( AT MOST )? NUMBER TIMES EOF ;
ifLine      : IF STRING IS FOUND STRING EOF ;
callLine    : CALL name ( WITH bindings )? EOF ;
asOneLine   : AS ONE BECAUSE STRING EOF ;

// ---- procedure: what a variant changes

stepRef      : STEP name onPhase? ;
onPhase      : ON PHASE? WORD ;
withoutLine  : WITHOUT stepRef EOF ;
stepLine     : stepRef ( BEFORE | AFTER ) stepRef EOF      # move
             | stepRef INSTEAD COLON any+ EOF              # replace
             | stepRef INSTEAD EOF                         # replaceBlock
             | stepRef INSTEAD OF PHASE? WORD EOF          # otherPhase
             ;
insertLine   : INSERT ( BEFORE | AFTER ) stepRef EOF ;
mustFailLine : MUST FAIL ON ruleName ( AT STEP? name )? onPhase? EOF ;
ruleName     : name ( SLASH name )? ;

// ---- examples

examplesHead : WORD name FOR kept ( separator kept )* EOF ;
exampleHead  : WORD STRING ( OF RULE names )? EOF ;
onLine       : ON NETWORK? name EOF ;
doLine       : WORD EOF ;
mustLine     : MUST ( HOLD | FAIL ) any* EOF ;
withLine     : WITH bindings EOF ;
saysLine     : SAYS STRING EOF ;
becauseLine  : BECAUSE any+ EOF ;
