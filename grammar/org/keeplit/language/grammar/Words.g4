/*
 * The words of one line, the same for all four kinds of file. The reader hands over one line at a time,
 * so that a mistake never leaves its line; what is spelled out here is reserved, and a name that is one of
 * these words is written in quotes.
 */
lexer grammar Words;

COMMA   : ',' ;
COLON   : ':' ;
SLASH   : '/' ;
PERCENT : '%' ;

AFTER : 'after' ;
ALL : 'all' ;
ALWAYS : 'always' ;
AND : 'and' ;
ANY : 'any' ;
ARE : 'are' ;
AS : 'as' ;
AT : 'at' ;
BECAUSE : 'because' ;
BEFORE : 'before' ;
BY : 'by' ;
CALL : 'call' ;
CAUTION : 'caution' ;
CITATION : 'citation' ;
CLEARANCE : 'clearance' ;
CONDUCTOR : 'conductor' ;
CREW : 'crew' ;
EACH : 'each' ;
END : 'end' ;
ENDS : 'ends' ;
EQUIPMENT : 'equipment' ;
EVERY : 'every' ;
EXPECTS : 'expects' ;
FAIL : 'fail' ;
FOR : 'for' ;
FOUND : 'found' ;
FROM : 'from' ;
GIVEN : 'given' ;
HELD : 'held' ;
HOLD : 'hold' ;
IF : 'if' ;
IN : 'in' ;
INSERT : 'insert' ;
INSTEAD : 'instead' ;
IS : 'is' ;
KEEPS : 'keeps' ;
KIND : 'kind' ;
LANGUAGE : 'language' ;
MODE : 'mode' ;
MOST : 'most' ;
MUST : 'must' ;
NETWORK : 'network' ;
NEVER : 'never' ;
NO : 'no' ;
OF : 'of' ;
ON : 'on' ;
ONE : 'one' ;
OR : 'or' ;
ORDER : 'order' ;
OTHERWISE : 'otherwise' ;
OUTAGE : 'outage' ;
PHASE : 'phase' | 'phases' ;
PLANNED : 'planned' ;
PROCEDURE : 'procedure' ;
PROVED : 'proved' ;
RATING : 'rating' ;
RECORDS : 'records' ;
REPEAT : 'repeat' ;
REQUIRE : 'require' ;
REQUIRES : 'requires' ;
REVISION : 'revision' ;
RULE : 'rule' ;
RULEBOOK : 'rulebook' ;
SAYS : 'says' ;
SOME : 'some' ;
STAGE : 'stage' ;
STARTS : 'starts' ;
STEP : 'step' ;
SYSTEM : 'system' ;
TEMPORARY : 'temporary' ;
THAT : 'that' ;
THE : 'the' ;
TIMES : 'times' ;
TITLE : 'title' ;
TO : 'to' ;
TOGETHER : 'together' ;
UNLESS : 'unless' ;
USES : 'uses' ;
VARIANT : 'variant' ;
VERB : 'verb' ;
WHILE : 'while' ;
WITH : 'with' ;
WITHOUT : 'without' ;

NUMBER : '-'? [0-9]+ ( '.' [0-9]+ )? ;

// A text ends on its line. One that does not is a token too, so that the mistake can be told.
STRING      : '"' ~["]* '"' ;
OPEN_STRING : '"' ~["]* ;

// Letters of all alphabets, not looked at one by one: the reader tells which of these characters is no letter.
WORD : [A-Za-z\u0080-\u{10FFFF}] [A-Za-z0-9_\-\u0080-\u{10FFFF}]* ;

COMMENT : '#' ~[\n]* -> skip ;
SPACE   : [ \t\r]+ -> skip ;

// Whatever else stands there; the reader names the character.
OTHER : . ;
